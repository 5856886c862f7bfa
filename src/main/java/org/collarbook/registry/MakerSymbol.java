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
        return switch (Letters.capitals(text, LONGEST, EXPECTED)) {
            case ParseResult.Parsed<String>(var capitals, var _) -> ParseResult.parsed(new MakerSymbol(capitals));
            case ParseResult.Rejected<String>(int index, var found, var expected) -> new ParseResult.Rejected<>(index,
                    found, expected);
        };
    }

    public static MakerSymbol parse(String text) {
        return tryParse(text).orElseThrow("maker's symbol", Letters.shown(text));
    }

    @Override
    public String toString() {
        return value;
    }
}
