package org.collarbook.regulation;

import java.util.ArrayList;
import java.util.List;

/**
 * A text as read off a stamp, made plain: outer space gone, inner space single, full-width letters and odd dashes
 * written as plain ones. Keeps where each character stood, so that a failure names its place in the raw text.
 */
public final class StampText {

    private static final String DASHES = "\u2010\u2011\u2012\u2013\u2014\u2015\u2212\ufe58\ufe63";
    private static final char FULL_WIDTH = 0xfee0;

    private final String raw;
    private final String plain;
    /** Where each character of the plain text stands in the raw one; empty where the two are the same. */
    private final int[] places;
    private final List<String> warnings = new ArrayList<>();
    private final int unprintableAt;

    private StampText(String raw) {
        this.raw = raw;
        boolean plainAlready = isPlain(raw);
        this.places = plainAlready ? new int[0] : new int[raw.length() + 1];
        this.unprintableAt = plainAlready ? -1 : unprintable(raw);
        this.plain = plainAlready ? raw : unprintableAt < 0 ? plainly() : "";
    }

    /** Most texts are, and those that the register keeps all. */
    private static boolean isPlain(String raw) {
        boolean space = true;
        for (int i = 0; i < raw.length(); i++) {
            char c = raw.charAt(i);
            if (c < ' ' || c >= 0x7f || c == ' ' && space) {
                return false;
            }
            space = c == ' ';
        }
        return !space || raw.isEmpty();
    }

    public static StampText of(String raw) {
        return new StampText(raw);
    }

    /** Where a control character, an invisible one or half a character stands inside the text; else -1. */
    private static int unprintable(String raw) {
        int start = raw.length() - raw.stripLeading().length();
        int end = raw.stripTrailing().length();
        for (int i = start; i < end; i++) {
            char c = raw.charAt(i);
            if (c >= ' ' && c < 0x7f || c == '\t') {
                continue;
            }
            int type = Character.getType(raw.codePointAt(i));
            if (type == Character.CONTROL || type == Character.FORMAT || type == Character.SURROGATE
                    || type == Character.LINE_SEPARATOR || type == Character.PARAGRAPH_SEPARATOR) {
                return i;
            }
            i += Character.isHighSurrogate(c) ? 1 : 0;
        }
        return -1;
    }

    private String plainly() {
        StringBuilder text = new StringBuilder(raw.length());
        boolean odd = false;
        for (int i = 0; i < raw.length(); i++) {
            char c = raw.charAt(i);
            char as = asPlain(c);
            odd |= as != c && as != ' ';
            if (as == ' ' && (text.isEmpty() || text.charAt(text.length() - 1) == ' ')) {
                continue;
            }
            places[text.length()] = i;
            text.append(as);
        }
        if (!text.isEmpty() && text.charAt(text.length() - 1) == ' ') {
            text.setLength(text.length() - 1);
        }
        places[text.length()] = text.isEmpty() ? 0 : places[text.length() - 1] + 1;
        if (odd) {
            warnings.add("odd dashes or full-width characters are read as plain ones");
        }
        return text.toString();
    }

    private static char asPlain(char c) {
        if (c < 0x7f) {
            return c <= ' ' ? ' ' : c;
        }
        if (DASHES.indexOf(c) >= 0) {
            return '-';
        }
        if (c > 0xff00 && c < 0xff5f) {
            return (char) (c - FULL_WIDTH);
        }
        return Character.isWhitespace(c) || Character.isSpaceChar(c) ? ' ' : c;
    }

    public String raw() {
        return raw;
    }

    /** Empty where the text cannot be read at all. */
    public String plain() {
        return plain;
    }

    /** In capitals, letter by letter, so that each keeps its place. */
    public String capitals() {
        StringBuilder upper = new StringBuilder(plain);
        for (int i = 0; i < upper.length(); i++) {
            char c = upper.charAt(i);
            upper.setCharAt(i, c >= 'a' && c <= 'z' ? (char) (c - 32) : c);
        }
        return upper.toString();
    }

    /** A list of its own, to which a reader adds its doubts. */
    public List<String> warnings() {
        return new ArrayList<>(warnings);
    }

    public <T> Reading.Unreadable<T> unreadable(int index, String expected) {
        return unreadable(Reading.Fault.SHAPE, index, expected);
    }

    public <T> Reading.Unreadable<T> unreadable(Reading.Fault fault, int index, String expected) {
        ParseResult.Rejected<T> rejected = rejected(index, expected);
        return new Reading.Unreadable<>(raw, fault, rejected.index(), rejected.found(), rejected.expected());
    }

    /** The refusal, with {@code index} counted in the plain text. */
    public <T> ParseResult.Rejected<T> rejected(int index, String expected) {
        return unprintableAt < 0
                ? ParseResult.rejectedAt(raw, places.length == 0 ? index : places[index], expected)
                : ParseResult.rejectedAt(raw, unprintableAt, "printable characters; " + expected);
    }
}
