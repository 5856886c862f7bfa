package org.collarbook.holds;

import org.collarbook.registry.Serial;
import org.jspecify.annotations.Nullable;

/**
 * The serial numbers from one to another that differ in the number at their end alone. Another serial is compared when
 * it has the same characters before that number and as many digits; any other is not compared, for nobody can tell
 * where a maker's other ways to write a serial would fall.
 */
public record SerialRange(Serial first, Serial last) {

    public static final String EXPECTED = "two serials of one length that differ in the digits at their end alone, the lower"
            + " first; twice the same for a single one";

    public SerialRange {
        if (!isRange(first.value(), last.value())) {
            throw new IllegalArgumentException(first + " to " + last + ": expected " + EXPECTED);
        }
    }

    public static @Nullable SerialRange tryOf(Serial first, Serial last) {
        return isRange(first.value(), last.value()) ? new SerialRange(first, last) : null;
    }

    private static boolean isRange(String first, String last) {
        int prefix = prefix(first);
        // digits of one length compare as the numbers they are
        return first.length() == last.length() && prefix(last) <= prefix
                && last.startsWith(first.substring(0, prefix)) && isNumber(last, prefix)
                && first.compareTo(last) <= 0;
    }

    private static boolean isNumber(String serial, int from) {
        return serial.chars().skip(from).allMatch(SerialRange::isDigit);
    }

    /** How many characters stand before the digits at the end. */
    private static int prefix(String serial) {
        int at = serial.length();
        while (at > 0 && isDigit(serial.charAt(at - 1))) {
            at--;
        }
        return at;
    }

    private static boolean isDigit(int character) {
        return character >= '0' && character <= '9';
    }

    /** In characters as the database counts them. */
    int prefix() {
        return first.value().codePointCount(0, prefix(first.value()));
    }
}
