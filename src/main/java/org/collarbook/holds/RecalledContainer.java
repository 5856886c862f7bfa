package org.collarbook.holds;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A container that a recall concerns; {@code unknown} are the marks that could not be compared. */
public record RecalledContainer(UUID id, String specification, @Nullable String maker, String serial,
        @Nullable LocalDate manufactured, Outcome outcome, List<String> unknown) {

    public enum Outcome {
        HELD,
        LIFTED,
        /** It matches and has no hold: not reached yet, or registered after the recall's end. */
        MATCHED,
        NOT_COMPARED
    }

    public RecalledContainer {
        unknown = List.copyOf(unknown);
    }
}
