package org.collarbook.regulation;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A place in a text in capitals, moved on by each piece that is taken. */
final class StampCursor {

    private final String text;
    private int at;

    StampCursor(String text) {
        this.text = text;
    }

    int at() {
        return at;
    }

    void backTo(int place) {
        at = place;
    }

    boolean isAtEnd() {
        return at >= text.length();
    }

    void skipSpace() {
        while (!isAtEnd() && text.charAt(at) == ' ') {
            at++;
        }
    }

    /** The piece that the first fitting pattern finds here, or null. */
    @Nullable
    Matcher take(Pattern... patterns) {
        for (Pattern pattern : patterns) {
            Matcher matcher = pattern.matcher(text).region(at, text.length()).useTransparentBounds(true);
            if (matcher.lookingAt()) {
                at = matcher.end();
                return matcher;
            }
        }
        return null;
    }

    static @Nullable Integer number(@Nullable String digits) {
        return digits == null ? null : Integer.valueOf(digits);
    }
}
