package org.collarbook.regulation;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A special permit with its own requalification interval, when those are recorded. */
public record Permit(@Nullable String number, @Nullable LocalDate expires, @Nullable Integer intervalYears) {

    public Permit {
        if (intervalYears != null && (intervalYears < 1 || intervalYears > 40)) {
            throw new IllegalArgumentException("interval " + intervalYears + ": expected 1 to 40 years");
        }
    }
}
