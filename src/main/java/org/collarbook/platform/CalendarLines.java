package org.collarbook.platform;

/** The lines of a calendar, none longer than 75 octets (RFC 5545, 3.1). The library counts letters, not octets. */
final class CalendarLines {

    private static final int OCTETS = 75;

    private CalendarLines() {}

    /** {@code text} has its lines whole, as they come before folding. */
    static String folded(String text) {
        var folded = new StringBuilder(text.length() + text.length() / 32);
        int octets = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            int letter = text.codePointAt(i);
            if (letter == '\r' || letter == '\n') {
                octets = 0;
            } else if (octets + octets(letter) > OCTETS) {
                folded.append("\r\n ");
                octets = 1 + octets(letter);
            } else {
                octets += octets(letter);
            }
            folded.appendCodePoint(letter);
        }
        return folded.toString();
    }

    /** Of a letter in UTF-8. */
    private static int octets(int letter) {
        return letter < 0x80 ? 1 : letter < 0x800 ? 2 : letter < 0x10000 ? 3 : 4;
    }
}
