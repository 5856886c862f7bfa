package org.collarbook.registry;

import java.util.regex.Pattern;

import org.collarbook.regulation.ParseResult;

/**
 * What a scanner reads off the container: a GS1 returnable asset (GRAI, {@code (8003)}), a GS1 individual asset (GIAI,
 * {@code (8004)}), or a plain barcode as it is. A GRAI without its serial part names a type of container, not one, so
 * it is no tag.
 */
public record Tag(String value) {

    public static final int LONGEST = 60;
    /** The GS1 character set 82, from memory: what these two may hold. */
    private static final String GS1_CHARACTERS = "[!\"%&'()*+,\\-./0-9:;<=>?A-Z_a-z]";
    private static final Pattern GRAI = Pattern.compile("\\(8003\\)0(\\d{13})(" + GS1_CHARACTERS + "{0,16})");
    private static final Pattern GIAI = Pattern.compile("\\(8004\\)" + GS1_CHARACTERS + "{1,30}");
    private static final String PLAIN_EXPECTED = "1 to 60 printable characters";
    private static final String GRAI_EXPECTED = "(8003)0, 13 digits of which the last is the check digit, and a serial"
            + " of 1 to 16 characters";
    private static final String GIAI_EXPECTED = "(8004) and 1 to 30 characters of the GS1 set";

    public Tag {
        if (!(read(value) instanceof ParseResult.Parsed<String>(var same, var _)) || !same.equals(value)) {
            throw new IllegalArgumentException("tag '" + Letters.shown(value) + "': expected " + PLAIN_EXPECTED);
        }
    }

    public static ParseResult<Tag> tryParse(String text) {
        var composed = Letters.composed(text.strip());
        return switch (read(composed)) {
            case ParseResult.Parsed<String>(var tag, var _) -> {
                var refused = Letters.lookalike(tag);
                yield refused == null ? ParseResult.parsed(new Tag(tag)) : rejected(refused, text);
            }
            case ParseResult.Rejected<String> refused -> rejected(refused, text);
        };
    }

    /** Composed, a text may be longer than what was given. */
    private static ParseResult<Tag> rejected(ParseResult.Rejected<String> refused, String text) {
        return new ParseResult.Rejected<>(Math.min(refused.index(), text.length()), refused.found(),
                refused.expected());
    }

    public static Tag parse(String text) {
        return tryParse(text).orElseThrow("tag", Letters.shown(text));
    }

    private static ParseResult<String> read(String text) {
        var tag = text.strip();
        int wrong = Letters.wrongAt(tag, LONGEST);
        if (wrong >= 0) {
            return ParseResult.rejectedAt(tag, wrong, PLAIN_EXPECTED);
        }
        if (tag.startsWith("(8003)")) {
            return grai(tag);
        }
        return !tag.startsWith("(8004)") || GIAI.matcher(tag).matches()
                ? ParseResult.parsed(tag)
                : ParseResult.rejectedAt(tag, "(8004)".length(), GIAI_EXPECTED);
    }

    private static ParseResult<String> grai(String tag) {
        var shape = GRAI.matcher(tag);
        if (!shape.matches()) {
            return ParseResult.rejectedAt(tag, "(8003)".length(), GRAI_EXPECTED);
        }
        var digits = shape.group(1);
        if (digits.charAt(12) != checkDigit(digits.substring(0, 12))) {
            return ParseResult.rejectedAt(tag, shape.end(1) - 1,
                    "check digit " + checkDigit(digits.substring(0, 12)) + " after " + digits.substring(0, 12));
        }
        return shape.group(2).isEmpty()
                ? ParseResult.rejectedAt(tag, tag.length(), GRAI_EXPECTED)
                : ParseResult.parsed(tag);
    }

    /** GS1's modulo 10 check digit: weights 3, 1, 3, … from the right. */
    static char checkDigit(String payload) {
        int sum = 0;
        for (int i = 0; i < payload.length(); i++) {
            int weight = (payload.length() - i) % 2 == 1 ? 3 : 1;
            sum += weight * (payload.charAt(i) - '0');
        }
        return (char) ('0' + (10 - sum % 10) % 10);
    }

    @Override
    public String toString() {
        return value;
    }
}
