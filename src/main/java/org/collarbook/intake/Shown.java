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
        boolean fits = found.length() <= LONGEST;
        var start = fits ? found : found.substring(0, LONGEST);
        var plain = new StringBuilder(start.length());
        start.codePoints().forEach(c -> plain.appendCodePoint(isPlain(c) ? c : '\uFFFD'));
        return fits ? plain.toString() : plain + "… (" + found.length() + " characters)";
    }

    private static boolean isPlain(int c) {
        return !Character.isISOControl(c) && Character.getType(c) != Character.SURROGATE;
    }
}
