package org.collarbook.registry;

import java.util.Locale;

import org.collarbook.regulation.ParseResult;

/** The maker's symbol as registered and stamped beside the serial number, 49 CFR 178.35(f); in capitals. */
public record MakerSymbol(String value) {

    public static final int LONGEST = 20;
    static final String EXPECTED = "1 to 20 characters as stamped, no line breaks or other control characters";

    public MakerSymbol {
        var folded = Letters.fold(value);
        if (Letters.wrongAt(folded, LONGEST) >= 0 || !folded.equals(folded.toUpperCase(Locale.ROOT))) {
            throw new IllegalArgumentException("maker's symbol '" + Letters.shown(value) + "': expected " + EXPECTED);
        }
        value = folded;
    }

    public static ParseResult<MakerSymbol> tryParse(String text) {
        var folded = Letters.fold(text).toUpperCase(Locale.ROOT);
        // a capital may be longer than its small letter, so the place may lie past the text that was given
        int wrong = Letters.wrongAt(folded, LONGEST);
        return wrong < 0
                ? ParseResult.parsed(new MakerSymbol(folded))
                : ParseResult.rejectedAt(folded, Math.min(wrong, text.length()), EXPECTED);
    }

    public static MakerSymbol parse(String text) {
        return tryParse(text).orElseThrow("maker's symbol", Letters.shown(text));
    }

    @Override
    public String toString() {
        return value;
    }
}
