package org.collarbook.registry;

import java.util.regex.Pattern;

/** What the stamps that are free text have in common. */
final class Letters {

    private static final Pattern SPACES = Pattern.compile("\\h+");

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

    static String shown(String text) {
        return text.length() <= 80 ? text : text.substring(0, 80) + "…";
    }
}
