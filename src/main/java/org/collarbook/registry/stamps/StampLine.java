package org.collarbook.registry.stamps;

import org.collarbook.regulation.Reading;
import org.jspecify.annotations.Nullable;

/** One line, counted from 1, with what it was taken for; {@code kind} is null where that is open. */
public record StampLine(int number, @Nullable StampKind kind, Reading<Stamp> reading) {

    /** A text that can be sent back: half a character cannot, its place is kept. */
    public static String whole(String text) {
        var shown = new StringBuilder(text.length());
        text.codePoints().forEach(c -> shown.appendCodePoint(Character.getType(c) == Character.SURROGATE
                ? 0xfffd
                : c));
        return shown.toString();
    }
}
