package org.collarbook.regulation;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What stands after "TC": a cylinder of CSA B339, a tank of CSA B620, or an equivalency certificate. */
final class CanadianMark {

    private static final Pattern CERTIFICATE = Pattern.compile("SU[ .-]*([1-9]\\d{2,5})(?!\\d)");
    private static final Pattern TANK = Pattern.compile("(331|338|406|407|412|51)(?![A-Z0-9])");
    private static final Pattern CYLINDER = Pattern
            .compile("([23456789]\\d?[A-Z]{0,3}M|3FCM|3HWM)(?:[ .-]*([1-9]\\d{0,2}))?(?!\\d)");

    private CanadianMark() {}

    static @Nullable Specification take(StampCursor cursor) {
        Matcher certificate = cursor.take(CERTIFICATE);
        if (certificate != null) {
            return new Specification(Authority.TC, "SU", "SU" + certificate.group(1), null, null);
        }
        Matcher tank = cursor.take(TANK);
        if (tank != null) {
            return Specification.of(Authority.TC, tank.group(1), null);
        }
        Matcher cylinder = cursor.take(CYLINDER);
        return cylinder == null
                ? null
                : Specification.of(Authority.TC, cylinder.group(1), StampCursor.number(cylinder.group(2)));
    }
}
