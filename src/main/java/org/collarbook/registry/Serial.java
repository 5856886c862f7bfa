package org.collarbook.registry;

import java.util.Locale;

import org.collarbook.regulation.ParseResult;

/**
 * A serial number in the form that is compared: capitals, single spaces. What stands on the collar is kept beside it
 * ({@link Stamped}). Unique at most per maker.
 */
public record Serial(String value) {

    public static final int LONGEST = 40;
    static final String EXPECTED = "1 to 40 characters as stamped, no line breaks or other control characters";

    public Serial {
        var folded = Letters.fold(value);
        int wrong = Letters.wrongAt(folded, LONGEST);
        if (wrong >= 0 || !folded.equals(folded.toUpperCase(Locale.ROOT))) {
            throw new IllegalArgumentException("serial '" + Letters.shown(value) + "': expected " + EXPECTED);
        }
        value = folded;
    }

    public static ParseResult<Serial> tryParse(String text) {
        return switch (Letters.capitals(text, LONGEST, EXPECTED)) {
            case ParseResult.Parsed<String>(var capitals, var _) -> ParseResult.parsed(new Serial(capitals));
            case ParseResult.Rejected<String>(int index, var found, var expected) -> new ParseResult.Rejected<>(index,
                    found, expected);
        };
    }

    public static Serial parse(String text) {
        return tryParse(text).orElseThrow("serial", Letters.shown(text));
    }

    @Override
    public String toString() {
        return value;
    }
}
