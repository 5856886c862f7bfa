package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;

/**
 * Which rejections stand. What failed one of the tests of a tank or of a part is answered by that test alone; a rejection
 * by a test of the whole, or by an unknown one, is not cleared by a look from outside: 49 CFR 180.203, "rejected
 * cylinder". A mark bears no day, so one of the month of the rejection may be older than it and lifts nothing.
 */
final class Rejections {

    private final Facts facts;
    @Nullable
    private YearMonth refused;
    @Nullable
    private YearMonth refusedWhole;
    @Nullable
    private YearMonth passedWhole;
    private boolean ofPart;

    Rejections(Facts facts) {
        this.facts = facts;
    }

    /** What is dated later than that day is left out by the caller. */
    void count(Requalification one, LocalDate asOf) {
        Method method = one.method();
        boolean whole = method != null && method.isWholeInspection();
        if (one.result() == Result.PASSED) {
            passedWhole = whole ? later(passedWhole, one.month()) : passedWhole;
        } else if (one.result() == Result.REJECTED) {
            if (method != null && !method.isOfCylinder()) {
                ofPart |= !isAnswered(one, asOf);
            } else {
                refused = later(refused, one.month());
                refusedWhole = whole || method == null ? later(refusedWhole, one.month()) : refusedWhole;
            }
        }
    }

    private boolean isAnswered(Requalification rejection, LocalDate asOf) {
        List<Requalification> history = facts.requalifications();
        for (int i = 0; history != null && i < history.size(); i++) {
            Requalification one = history.get(i);
            if (one.result() == Result.PASSED && one.method() != null && one.method().answers(rejection.method())
                    && one.month().isAfter(rejection.month()) && !Outcome.isAhead(one.month(), asOf)) {
                return true;
            }
        }
        return false;
    }

    /** With a rejection that tells its day alone. What a tank failed in is not known then, so no test speaks to it. */
    boolean stand(@Nullable LocalDate rejectedOn, @Nullable YearMonth passed) {
        if (rejectedOn != null) {
            refused = later(refused, YearMonth.from(rejectedOn));
        }
        boolean mayBeLifted = facts.kind() == ContainerKind.CYLINDER;
        return ofPart || refused != null && !mayBeLifted || stands(refused, passed)
                || stands(refusedWhole, passedWhole);
    }

    private static boolean stands(@Nullable YearMonth refused, @Nullable YearMonth passed) {
        return refused != null && (passed == null || !passed.isAfter(refused));
    }

    static YearMonth later(@Nullable YearMonth one, YearMonth other) {
        return one == null || other.isAfter(one) ? other : one;
    }
}
