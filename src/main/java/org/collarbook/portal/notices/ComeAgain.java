package org.collarbook.portal.notices;

import java.time.Duration;
import java.util.regex.Pattern;

import org.apache.hc.core5.http.Header;
import org.jspecify.annotations.Nullable;

/**
 * The seconds of {@code Retry-After} (RFC 9110, 10.2.3) with 429 and 503, a day at most. One with a date is left aside: it
 * hangs on the endpoint's clock, and the schedule does as well.
 */
final class ComeAgain {

    private static final Pattern SECONDS = Pattern.compile("\\d{1,9}");
    private static final Duration MOST = Duration.ofDays(1);

    private ComeAgain() {}

    static @Nullable Duration read(int status, @Nullable Header told) {
        if (told == null || status != 429 && status != 503 || told.getValue() == null
                || !SECONDS.matcher(told.getValue().strip()).matches()) {
            return null;
        }
        var asked = Duration.ofSeconds(Long.parseLong(told.getValue().strip()));
        return asked.compareTo(MOST) < 0 ? asked : MOST;
    }
}
