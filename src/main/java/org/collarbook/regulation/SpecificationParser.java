package org.collarbook.regulation;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.jspecify.annotations.Nullable;

/** Reads one specification or a dual mark off a collar or data plate, in the forms that the trade stamps. */
final class SpecificationParser {

    private static final String EXPECTED = "a specification such as DOT-4BA240, TC-4BAM17, DOT-SP12345, UN, ASME or MC-331";
    private static final String GAP = "[\\s.-]*";
    private static final Pattern AUTHORITY = Pattern.compile("(DOT|ICC|CRC|BTC|CTC|TC)(?![A-Z&&[^EMS]])" + GAP);
    private static final Pattern FIXED_PRESSURE = Pattern
            .compile("4B" + GAP + "240" + GAP + "ET|3A" + GAP + "480" + GAP + "X|4AA" + GAP + "480");
    private static final Pattern TANK = Pattern.compile("MC" + GAP + "(306|307|312|330|331|338)");
    private static final Pattern DOT_TANK = Pattern.compile("(51|56|57|60|406|407|412)(?!\\d)");
    private static final Pattern UNPRESSED = Pattern.compile("(8AL|8|39|2P|2Q)(?:" + GAP + "NRC)?(?![A-Z0-9])");
    private static final Pattern CYLINDER = Pattern.compile(
            "(3HT|3AAX|3AA|3AX|3AL|3A|3BN|3B|3E|3T|4BA|4BW|4B|4DA|4DS|4D|4E|4L)(?:" + GAP + "([1-9]\\d{1,4}))?(?!\\d)");
    private static final Pattern SERIES_3 = Pattern.compile("3(?:[\\s.-]+([1-9]\\d{2,4}))?(?![A-Z0-9])");
    private static final Pattern CANADIAN = Pattern
            .compile("([23456789]\\d?[A-Z]{0,3}M|3FCM|3HWM)(?:" + GAP + "([1-9]\\d{0,2}))?(?!\\d)");
    private static final Pattern SPECIAL_PERMIT = Pattern
            .compile("(SP|E)" + GAP + "(\\d{3,5})(?:[\\s-]+([1-9]\\d{1,4}))?(?!\\d)");
    private static final Pattern UN = Pattern.compile("UN(?:[\\s-]+(?:(ISO)[\\s-]*(\\d{3,5}(?:-\\d)?)|(T\\d{1,2})))?");
    private static final Pattern ASME = Pattern
            .compile("(?:API[\\s-]*)?ASME(?:[\\s-]*U)?(?![A-Z0-9])|U(?:[\\s-]*STAMP)?(?![A-Z0-9])");

    private final String text;
    private final List<String> warnings = new ArrayList<>();
    private int at;

    SpecificationParser(String text) {
        StringBuilder upper = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            upper.append(c >= 'a' && c <= 'z' ? (char) (c - 32) : c);
        }
        this.text = upper.toString();
    }

    ParseResult<Specification> read() {
        Specification first = mark();
        if (first == null) {
            return rejected(EXPECTED);
        }
        skipSpace();
        if (at < text.length() && (text.charAt(at) == '/' || text.charAt(at) == '&')) {
            at++;
            Specification second = mark();
            if (second == null) {
                return rejected(EXPECTED);
            }
            if (!mayStandBeside(first, second)) {
                return rejected("beside a DOT mark a TC mark, or the same design under an older authority");
            }
            first = first.with(second);
            skipSpace();
        }
        return at < text.length()
                ? rejected("nothing more, or / and a second mark")
                : new Parsed<>(first, List.copyOf(
                        warnings));
    }

    /** Two marks of one authority would ask for two rules at once: somebody has misread the collar. */
    private static boolean mayStandBeside(Specification first, Specification second) {
        return (first.authority() == Authority.TC) != (second.authority() == Authority.TC)
                || first.family().equals(second.family()) && Objects.equals(first.pressure(), second.pressure())
                        && first.detail() == null && second.detail() == null;
    }

    private Rejected<Specification> rejected(String expected) {
        return ParseResult.rejectedAt(text, at, expected);
    }

    private void skipSpace() {
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
    }

    private @Nullable Specification mark() {
        skipSpace();
        Matcher alone = take(ASME);
        if (alone != null) {
            return Specification.ASME;
        }
        Matcher un = take(UN);
        if (un != null) {
            String detail = un.group(1) != null ? "ISO " + un.group(2) : un.group(3);
            return new Specification(Authority.UN, "UN", detail, null, null);
        }
        Matcher named = take(AUTHORITY);
        Authority authority = named == null ? Authority.DOT : Authority.valueOf(named.group(1));
        Specification body = authority == Authority.TC ? canadian() : american(authority);
        if (body != null && named == null && !body.family().startsWith("MC-")) {
            warnings.add("no authority is stamped; read as DOT");
        }
        return body;
    }

    private @Nullable Specification canadian() {
        Matcher m = take(CANADIAN);
        return m == null ? null : Specification.of(Authority.TC, m.group(1), number(m.group(2)));
    }

    private @Nullable Specification american(Authority authority) {
        Matcher m = authority == Authority.DOT ? take(SPECIAL_PERMIT) : null;
        if (m != null) {
            return new Specification(Authority.SPECIAL_PERMIT, "SP", m.group(1) + m.group(2), number(m.group(3)), null);
        }
        m = take(TANK);
        if (m != null) {
            return Specification.of(Authority.DOT, "MC-" + m.group(1), null);
        }
        m = take(FIXED_PRESSURE);
        if (m != null) {
            String family = m.group().replaceAll(GAP, "");
            return Specification.of(authority, family, family.contains("240") ? 240 : 480);
        }
        m = take(DOT_TANK, UNPRESSED);
        if (m != null) {
            return Specification.of(authority, m.group(1), null);
        }
        m = take(CYLINDER);
        if (m != null && !isPossible(m.group(1), number(m.group(2)))) {
            at = m.start(2);
            return null;
        }
        if (m != null) {
            return Specification.of(authority, m.group(1), number(m.group(2)));
        }
        m = take(SERIES_3);
        return m == null ? null : Specification.of(authority, "3", number(m.group(1)));
    }

    /** The service pressures that 49 CFR 178.50, .51, .61 and .68 allow: a mark outside them was misread. */
    private static boolean isPossible(String family, @Nullable Integer pressure) {
        return pressure == null || switch (family) {
            case "4B" -> pressure >= 150 && pressure <= 500;
            case "4BA", "4BW", "4E" -> pressure >= 225 && pressure <= 500;
            default -> true;
        };
    }

    private static @Nullable Integer number(@Nullable String digits) {
        return digits == null ? null : Integer.valueOf(digits);
    }

    private @Nullable Matcher take(Pattern... patterns) {
        for (Pattern pattern : patterns) {
            Matcher matcher = pattern.matcher(text).region(at, text.length()).useTransparentBounds(true);
            if (matcher.lookingAt()) {
                at = matcher.end();
                return matcher;
            }
        }
        return null;
    }
}
