package org.collarbook.regulation;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The requalifier identification number that DOT assigns: a letter and three digits, 49 CFR 180.213. */
public record Rin(String value) {

    public Rin {
        if (rejected(value) != null) {
            throw new IllegalArgumentException("RIN '" + value + "': expected a capital letter and three digits");
        }
    }

    public static ParseResult<Rin> tryParse(String text) {
        String upper = text.strip().toUpperCase(Locale.ROOT);
        ParseResult.Rejected<Rin> rejected = rejected(upper);
        return rejected == null ? ParseResult.parsed(new Rin(upper)) : rejected;
    }

    public static Rin parse(String text) {
        return tryParse(text).orElseThrow("RIN", text);
    }

    private static ParseResult.@Nullable Rejected<Rin> rejected(String text) {
        for (int i = 0; i < 4; i++) {
            if (i >= text.length()) {
                return ParseResult.rejectedAt(text, i, "a letter and three digits, such as A123");
            }
            char c = text.charAt(i);
            if (i == 0 ? c < 'A' || c > 'Z' : c < '0' || c > '9') {
                return ParseResult.rejectedAt(text, i, i == 0 ? "a letter" : "a digit");
            }
        }
        return text.length() == 4 ? null : ParseResult.rejectedAt(text, 4, "nothing after four characters");
    }

    @Override
    public String toString() {
        return value;
    }
}
