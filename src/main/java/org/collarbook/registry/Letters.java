package org.collarbook.registry;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

import org.collarbook.regulation.ParseResult;
import org.jspecify.annotations.Nullable;

/** What the stamps that are free text have in common. */
final class Letters {

    private static final Pattern SPACES = Pattern.compile("\\h+");

    /** They show nothing, though Unicode counts them among letters and symbols: Hangul fillers and the empty braille cell. */
    private static final String BLANK = "\u115f\u1160\u2800";

    private Letters() {}

    static String fold(String text) {
        return SPACES.matcher(text).replaceAll(" ").strip();
    }

    /** Where the text stops being 1 to {@code longest} printable characters; -1 when it is. */
    static int wrongAt(String text, int longest) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean paired = Character.isHighSurrogate(c) && i + 1 < text.length()
                    && Character.isLowSurrogate(text.charAt(i + 1))
                    || Character.isLowSurrogate(c) && i > 0 && Character.isHighSurrogate(text.charAt(i - 1));
            if (i >= longest || Character.isISOControl(c) || Character.isSurrogate(c) && !paired) {
                return i;
            }
        }
        return text.isEmpty() ? 0 : -1;
    }

    /**
     * The text folded, in capitals, a letter with its accent as one character however it was typed; or why it is none of 1
     * to {@code longest} characters that can be seen.
     */
    static ParseResult<String> capitals(String text, int longest, String expected) {
        var composed = composed(fold(text));
        var capitals = composed(composed.toUpperCase(Locale.ROOT));
        int wrong = wrongAt(capitals, longest);
        // a capital may hide what the small letter was, and may be longer, so that its place lies past what was given
        var refused = wrong >= 0 ? ParseResult.<String>rejectedAt(capitals, wrong, expected) : lookalike(composed);
        if (refused == null) {
            refused = lookalike(capitals);
        }
        return refused == null
                ? ParseResult.parsed(capitals)
                : new ParseResult.Rejected<>(Math.min(refused.index(), text.length()), refused.found(),
                        refused.expected());
    }

    static String composed(String text) {
        return Normalizer.normalize(text, Normalizer.Form.NFC);
    }

    /**
     * Refuses what looks like another text, or like none, and so would make two containers of one: characters that nobody
     * can see or stamp, and other forms of plain ones such as full-width letters. Null where there is nothing of the kind.
     * Whole characters only: {@link #wrongAt} comes first.
     */
    static ParseResult.@Nullable Rejected<String> lookalike(String text) {
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int letter = text.codePointAt(i);
            var same = Character.toString(letter);
            var plain = Normalizer.normalize(same, Normalizer.Form.NFKC);
            if (isUnseen(letter)) {
                return ParseResult.rejectedAt(text, i,
                        named(letter) + " can be neither seen nor stamped by itself: leave"
                                + " it out");
            }
            if (!plain.equals(same)) {
                return ParseResult.rejectedAt(text, i, named(letter) + " is another form of '" + plain + "': write '"
                        + plain.strip() + "' where that is stamped");
            }
        }
        return null;
    }

    /** Accents that are part of no letter, too. */
    private static boolean isUnseen(int letter) {
        return BLANK.indexOf(letter) >= 0 || switch (Character.getType(letter)) {
            case Character.FORMAT, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR, Character.PRIVATE_USE,
                    Character.UNASSIGNED, Character.NON_SPACING_MARK, Character.COMBINING_SPACING_MARK,
                    Character.ENCLOSING_MARK ->
                true;
            default -> false;
        };
    }

    private static String named(int letter) {
        var name = Character.getName(letter);
        return String.format(Locale.ROOT, "U+%04X", letter) + (name == null ? "" : " (" + name + ")");
    }

    static String shown(String text) {
        return text.length() <= 80 ? text : text.substring(0, 80) + "…";
    }
}
