package org.collarbook.platform;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * Where a page ended: the sort key of its last row, as opaque text. A page is read by {@code (key) > (cursor)}, so its
 * cost does not grow with how far the reader has come.
 */
public record Cursor(List<String> key) {

    /** So that what is read after it can be counted on from it. */
    private static final long HIGHEST = Long.MAX_VALUE / 2;
    private static final char SEPARATOR = '\u001f';

    public Cursor {
        key = List.copyOf(key);
    }

    public static Cursor after(Object... key) {
        return new Cursor(Arrays.stream(key).map(String::valueOf).toList());
    }

    public static @Nullable Cursor parse(@Nullable String text, int parts) {
        if (text == null || text.isEmpty()) {
            return null;
        }
        try {
            var plain = new String(Base64.getUrlDecoder().decode(text), StandardCharsets.UTF_8);
            var key = List.of(plain.split(String.valueOf(SEPARATOR), -1));
            if (key.size() == parts) {
                return new Cursor(key);
            }
        } catch (IllegalArgumentException notBase64) {
            // answered below like any other cursor that is not ours
        }
        throw refused(text);
    }

    /** The cursor of a list that is sorted by id alone. */
    public static @Nullable UUID parseId(@Nullable String text) {
        var cursor = parse(text, 1);
        try {
            return cursor == null ? null : UUID.fromString(cursor.key.getFirst());
        } catch (IllegalArgumentException notAnId) {
            throw refused(String.valueOf(text));
        }
    }

    /** The cursor of a list that is sorted by a number alone, such as one counted up or a line of a file. */
    public static @Nullable Long parseNumber(@Nullable String text) {
        var cursor = parse(text, 1);
        if (cursor == null) {
            return null;
        }
        try {
            long number = Long.parseLong(cursor.key.getFirst());
            if (number >= 0 && number < HIGHEST) {
                return number;
            }
        } catch (NumberFormatException notANumber) {
            // answered below like one that no row can have
        }
        throw refused(String.valueOf(text));
    }

    public static ProblemException refused(String text) {
        return Problem.invalid("cursor", "INVALID_CURSOR", text, "the `next` value of an earlier page, unchanged")
                .asException();
    }

    @Override
    public String toString() {
        return Base64.getUrlEncoder().withoutPadding()
                .encodeToString(String.join(String.valueOf(SEPARATOR), key).getBytes(StandardCharsets.UTF_8));
    }
}
