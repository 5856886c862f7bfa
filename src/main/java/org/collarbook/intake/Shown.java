package org.collarbook.intake;

import org.jspecify.annotations.Nullable;

/** A cell as a report may repeat it: bounded, and without what neither a page nor the database can keep. */
final class Shown {

    private static final int LONGEST = 200;

    private Shown() {}

    static @Nullable String of(@Nullable String found) {
        if (found == null) {
            return null;
        }
        return found.length() <= LONGEST
                ? plain(found)
                : plain(found.substring(0, LONGEST)) + "… (" + found.length() + " characters)";
    }

    static String plain(String text) {
        if (text.codePoints().allMatch(Shown::isPlain)) {
            return text;
        }
        var plain = new StringBuilder(text.length());
        text.codePoints().forEach(c -> plain.appendCodePoint(isPlain(c) ? c : '\uFFFD'));
        return plain.toString();
    }

    private static boolean isPlain(int c) {
        return !Character.isISOControl(c) && Character.getType(c) != Character.SURROGATE;
    }
}
