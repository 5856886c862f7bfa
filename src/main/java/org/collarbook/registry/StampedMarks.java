package org.collarbook.registry;

import java.time.LocalDate;
import java.util.List;

import org.collarbook.platform.FieldError;
import org.jspecify.annotations.Nullable;

/** Marks as somebody typed or scanned them, each in its own field; {@link #read} says all that is wrong with them. */
public record StampedMarks(@Nullable String kind, @Nullable String specification, @Nullable String maker,
        @Nullable String serial, @Nullable String manufactured, @Nullable String waterCapacity, @Nullable String tare,
        @Nullable String servicePressure) {

    /**
     * The marks, or null and every reason why not. Remarks do not refuse: they say what was assumed. Pointers are
     * {@code /kind}, {@code /serial} and so on, by the names of this record.
     */
    public record Reading(@Nullable Marks marks, List<FieldError> refusals, List<FieldError> remarks) {}

    public Reading read(LocalDate asOf) {
        return new MarksReader(this, asOf).read();
    }
}
