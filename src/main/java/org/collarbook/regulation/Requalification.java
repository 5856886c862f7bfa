package org.collarbook.regulation;

import java.time.YearMonth;
import org.jspecify.annotations.Nullable;

/**
 * One completed inspection or test. {@code method} null is a missing fact, never the longest interval;
 * {@code rinSeen} says that a named person declared to have seen the RIN that is not recorded.
 */
public record Requalification(YearMonth month, @Nullable Method method, boolean star, boolean plus, @Nullable Rin rin,
        boolean rinSeen, Result result) {

    /** After this month a mark bears the requalifier's RIN, 49 CFR 180.209(g) and 180.213. */
    public static final YearMonth LAST_WITHOUT_RIN = YearMonth.of(2004, 5);

    public enum Result {
        PASSED,
        REJECTED,
        CONDEMNED
    }

    public static Requalification passed(YearMonth month, @Nullable Method method) {
        return new Requalification(month, method, false, false, null, false, Result.PASSED);
    }

    public static Requalification passed(YearMonth month, @Nullable Method method, Rin rin) {
        return new Requalification(month, method, false, false, rin, false, Result.PASSED);
    }

    public boolean lacksRin() {
        return rin == null && !rinSeen && month.isAfter(LAST_WITHOUT_RIN);
    }
}
