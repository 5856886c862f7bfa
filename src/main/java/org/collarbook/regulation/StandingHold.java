package org.collarbook.regulation;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A hold that has not been lifted; a null day counts as placed already. {@code text} and {@code citation} say what the
 * reason's code stands for and where, when that is known.
 */
public record StandingHold(String reason, @Nullable LocalDate placedOn, @Nullable String text,
        @Nullable Citation citation) {

    public StandingHold(String reason, @Nullable LocalDate placedOn) {
        this(reason, placedOn, null, null);
    }
}
