package org.collarbook.regulation;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What stands after "DOT", "ICC" and the old Canadian authorities, or without any of them. */
final class AmericanMark {

    private static final String GAP = "[ .-]*";
    private static final Pattern FIXED_PRESSURE = Pattern
            .compile("4B" + GAP + "240" + GAP + "ET|3A" + GAP + "480" + GAP + "X|4AA" + GAP + "480");
    private static final Pattern TANK = Pattern.compile("(MC)" + GAP + "(306|307|312|330|331|338)");
    private static final Pattern PORTABLE = Pattern.compile("(IM)" + GAP + "(101|102)(?!\\d)");
    private static final Pattern DOT_TANK = Pattern.compile("(51|56|57|60|406|407|412)(?!\\d)");
    private static final Pattern UNPRESSED = Pattern.compile("(8AL|8|39|2P|2Q)(?:" + GAP + "NRC)?(?![A-Z0-9])");
    private static final Pattern CYLINDER = Pattern.compile(
            "(3HT|3AAX|3AA|3AX|3AL|3A|3BN|3B|3E|3T|4BA|4BW|4B|4DA|4DS|4D|4E|4L)(?:" + GAP + "([1-9]\\d{1,4}))?(?!\\d)");
    private static final Pattern SERIES_3 = Pattern.compile("3(?:[ .-]+([1-9]\\d{2,4}))?(?![A-Z0-9])");
    private static final Pattern SPECIAL_PERMIT = Pattern
            .compile("(SP|E)" + GAP + "(\\d{3,5})(?:[ -]+([1-9]\\d{1,4}))?(?!\\d)");

    private AmericanMark() {}

    static @Nullable Specification take(StampCursor cursor, Authority authority) {
        Matcher m = authority == Authority.DOT ? cursor.take(SPECIAL_PERMIT) : null;
        if (m != null) {
            return new Specification(Authority.SPECIAL_PERMIT, "SP", m.group(1) + m.group(2),
                    StampCursor.number(m.group(3)), null);
        }
        m = cursor.take(TANK, PORTABLE);
        if (m != null) {
            return Specification.of(Authority.DOT, m.group(1) + "-" + m.group(2), null);
        }
        m = cursor.take(FIXED_PRESSURE);
        if (m != null) {
            String family = m.group().replaceAll(GAP, "");
            return Specification.of(authority, family, family.contains("240") ? 240 : 480);
        }
        m = cursor.take(DOT_TANK, UNPRESSED);
        return m != null ? Specification.of(authority, m.group(1), null) : pressed(cursor, authority);
    }

    private static @Nullable Specification pressed(StampCursor cursor, Authority authority) {
        Matcher m = cursor.take(CYLINDER);
        if (m != null && !isPossible(m.group(1), StampCursor.number(m.group(2)))) {
            cursor.backTo(m.start(2));
            return null;
        }
        if (m != null) {
            return Specification.of(authority, m.group(1), StampCursor.number(m.group(2)));
        }
        m = cursor.take(SERIES_3);
        return m == null ? null : Specification.of(authority, "3", StampCursor.number(m.group(1)));
    }

    /** The service pressures that 49 CFR 178.50, .51, .61 and .68 allow: a mark outside them was misread. */
    private static boolean isPossible(String family, @Nullable Integer pressure) {
        return pressure == null || switch (family) {
            case "4B" -> pressure >= 150 && pressure <= 500;
            case "4BA", "4BW", "4E" -> pressure >= 225 && pressure <= 500;
            default -> true;
        };
    }
}
