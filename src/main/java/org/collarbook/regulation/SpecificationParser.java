package org.collarbook.regulation;

import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.jspecify.annotations.Nullable;

/** Reads one specification or a dual mark off a collar or data plate, in the forms that the trade stamps. */
final class SpecificationParser {

    private static final String EXPECTED = "a specification such as DOT-4BA240, TC-4BAM17, DOT-SP12345, UN, EN 1442, ASME"
            + " or MC-331";
    private static final Pattern AUTHORITY = Pattern.compile("(DOT|ICC|CRC|BTC|CTC|TC)(?![A-Z&&[^EMS]])[ .-]*");
    private static final Pattern UN = Pattern.compile("UN(?:[ -]+(?:(ISO)[ -]*(\\d{3,5}(?:-\\d)?)|(T\\d{1,2})))?");
    private static final Pattern ASME = Pattern
            .compile("(?:API[ -]*)?ASME(?:[ -]*U)?(?![A-Z0-9])|U(?:[ -]*STAMP)?(?![A-Z0-9])");
    /** A sign between two marks, or nothing but a space before the next authority. */
    private static final Pattern SECOND = Pattern
            .compile("[/&]|(?<=[^/& ] )(?=(?:DOT|ICC|CRC|BTC|CTC|TC)[ .-]*[3-9])");

    private final StampText stamp;
    private final StampCursor cursor;
    private final List<String> warnings;

    SpecificationParser(String raw) {
        this.stamp = StampText.of(raw);
        this.cursor = new StampCursor(stamp.capitals());
        this.warnings = stamp.warnings();
    }

    ParseResult<Specification> read() {
        Specification first = mark();
        if (first == null) {
            return rejected(EXPECTED);
        }
        cursor.skipSpace();
        if (cursor.take(SECOND) != null) {
            Specification second = mark();
            if (second == null) {
                return rejected(EXPECTED);
            }
            if (!mayStandBeside(first, second)) {
                return rejected("beside a DOT mark a TC mark, or the same design under an older authority");
            }
            first = first.with(second);
        }
        return cursor.isAtEnd()
                ? new Parsed<>(first, List.copyOf(warnings))
                : rejected("nothing more, or / and a second mark");
    }

    /** Two marks of one authority would ask for two rules at once: somebody has misread the collar. */
    private static boolean mayStandBeside(Specification first, Specification second) {
        return (first.authority() == Authority.TC) != (second.authority() == Authority.TC)
                || first.family().equals(second.family()) && Objects.equals(first.pressure(), second.pressure())
                        && first.detail() == null && second.detail() == null;
    }

    private Rejected<Specification> rejected(String expected) {
        return stamp.rejected(cursor.at(), expected);
    }

    private @Nullable Specification mark() {
        cursor.skipSpace();
        if (cursor.take(ASME) != null) {
            return Specification.ASME;
        }
        Specification european = EuropeanMark.take(cursor, warnings);
        if (european != null) {
            return european;
        }
        Matcher un = cursor.take(UN);
        if (un != null) {
            String detail = un.group(1) != null ? "ISO " + un.group(2) : un.group(3);
            return new Specification(Authority.UN, "UN", detail, null, null);
        }
        Matcher named = cursor.take(AUTHORITY);
        Authority authority = named == null ? Authority.DOT : Authority.valueOf(named.group(1));
        Specification body = authority == Authority.TC
                ? CanadianMark.take(cursor)
                : AmericanMark.take(cursor, authority);
        if (body != null && named == null && !body.namesItself()) {
            warnings.add("no authority is stamped; read as DOT");
        }
        return body;
    }
}
