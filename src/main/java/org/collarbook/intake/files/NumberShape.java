package org.collarbook.intake.files;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A number as a person sees it in the cell: with the zeros before and behind it and the words around it, such as
 * 00123456 or 47.60 lb. Digits that the cell hides stay.
 */
record NumberShape(String before, int whole, int decimals, String after) implements CellFormat {

    private static final Pattern DIGITS = Pattern.compile("[#0?][#0?,]*(?:\\.[0#?]*)?|\\.[0#?]+");
    private static final Pattern WORDS = Pattern.compile("\"([^\"]*)\"|\\\\(.)|_(.)|\\*.|\\[\\$([^\\]-]*)[^\\]]*]");
    private static final Pattern COLOUR = Pattern.compile("(?i)\\[(black|blue|cyan|green|magenta|red|white|yellow"
            + "|color ?\\d+)]");
    private static final Pattern LITERAL = Pattern.compile("[-+ $€£():/&'#0?,.]*");

    /** The number as it is, where the format is none that can be told in a few words. */
    static CellFormat of(String code) {
        var first = COLOUR.matcher(section(code)).replaceAll("");
        var marked = WORDS.matcher(first).replaceAll(word -> Matcher.quoteReplacement(hidden(word)));
        var digits = DIGITS.matcher(marked);
        if (!digits.find()) {
            return GENERAL;
        }
        var before = marked.substring(0, digits.start());
        var after = marked.substring(digits.end());
        if (!LITERAL.matcher(visible(before)).matches() || !LITERAL.matcher(visible(after)).matches()
                || DIGITS.matcher(visible(before) + visible(after)).find()) {
            return GENERAL;
        }
        var places = digits.group();
        int point = places.indexOf('.');
        return new NumberShape(shown(before).stripLeading(), zeros(point < 0 ? places : places.substring(0, point)),
                point < 0 ? 0 : zeros(places.substring(point)), shown(after).stripTrailing());
    }

    /** That of positive numbers; the others differ in sign and colour. */
    private static String section(String code) {
        boolean quoted = false;
        for (int i = 0; i < code.length(); i++) {
            quoted ^= code.charAt(i) == '"';
            if (code.charAt(i) == ';' && !quoted) {
                return code.substring(0, i);
            }
        }
        return code;
    }

    /** Words moved to where no letter of a format is, so that the digits can be found beside them. */
    private static String hidden(java.util.regex.MatchResult word) {
        var text = word.group(1) != null ? word.group(1) : word.group(2) != null ? word.group(2) : word.group(4);
        var plain = text == null ? word.group(3) == null ? "" : " " : text;
        return plain.chars().mapToObj(c -> String.valueOf((char) (c < 0x80 ? c + 0xe000 : c)))
                .reduce("", String::concat);
    }

    private static String visible(String text) {
        return text.codePoints().filter(c -> c < 0x80).mapToObj(Character::toString).reduce("", String::concat);
    }

    private static String shown(String text) {
        return text.chars().mapToObj(c -> String.valueOf((char) (c >= 0xe000 && c < 0xe080 ? c - 0xe000 : c)))
                .reduce("", String::concat);
    }

    private static int zeros(String places) {
        return (int) places.chars().filter(c -> c == '0').count();
    }

    @Override
    public String shown(BigDecimal number, boolean countsFrom1904) {
        var digits = CellFormat.plain(number.abs());
        int point = digits.indexOf('.');
        var fraction = point < 0 ? "" : digits.substring(point + 1);
        var padded = "0".repeat(Math.max(0, whole - (point < 0 ? digits.length() : point)))
                + (point < 0 ? digits : digits.substring(0, point));
        var shown = fraction.isEmpty() && decimals == 0
                ? padded
                : padded + "." + fraction + "0".repeat(Math.max(0, decimals - fraction.length()));
        return String.format(Locale.ROOT, "%s%s%s%s", number.signum() < 0 ? "-" : "", before, shown, after);
    }
}
