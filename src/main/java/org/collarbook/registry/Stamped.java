package org.collarbook.registry;

import org.jspecify.annotations.Nullable;

/** A value with the text it was read from; {@code raw} is null when that text says nothing more than the value. */
public record Stamped<T>(T value, @Nullable String raw) {

    public Stamped {
        raw = raw == null || raw.equals(value.toString()) ? null : raw;
    }

    public static <T> Stamped<T> of(T value) {
        return new Stamped<>(value, null);
    }

    public String asStamped() {
        return raw == null ? value.toString() : raw;
    }

    /** The same value given without a stamp keeps the stamp that is known. */
    static <T> @Nullable Stamped<T> keep(@Nullable Stamped<T> given, @Nullable Stamped<T> known) {
        return given != null && known != null && given.raw == null && given.value.equals(known.value) ? known : given;
    }
}
