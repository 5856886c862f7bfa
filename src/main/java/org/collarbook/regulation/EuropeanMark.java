package org.collarbook.regulation;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The marks of containers under ADR: the pi mark of the directive on transportable pressure equipment, the EN standard
 * of the design, or both. P15Y is the period of fifteen years that ADR P200(12) grants to a group of cylinders.
 */
final class EuropeanMark {

    private static final String GAP = "[ -]*";
    private static final String PI = "(?:ADR" + GAP + ")?(?:[\u03c0\u03a0]|PI(?![A-Z0-9]))";
    private static final Pattern STANDARD = Pattern.compile("(?:(?:" + PI + "|ADR)" + GAP + ")?EN" + GAP
            + "([1-9]\\d{2,4})(?!\\d)( ?[:-] ?\\d{4}(?!\\d)(?: ?\\+ ?A\\d(?: ?: ?\\d{4})?)?)?");
    /** The number of the notified body stands beside the pi mark, 2010/35/EU article 15 from memory. */
    private static final Pattern PI_ALONE = Pattern.compile(PI + "(" + GAP + "\\d{4}(?!\\d))?");
    private static final Pattern DRUM = Pattern.compile("(?:ADR|PRESSURE)" + GAP + "DRUM(?![A-Z0-9])");
    private static final Pattern FIFTEEN_YEARS = Pattern.compile(GAP + "P15Y(?![A-Z0-9])");

    private EuropeanMark() {}

    static @Nullable Specification take(StampCursor cursor, List<String> warnings) {
        if (cursor.take(DRUM) != null) {
            return of("DRUM", null);
        }
        Matcher standard = cursor.take(STANDARD);
        Matcher pi = standard == null ? cursor.take(PI_ALONE) : null;
        if (standard == null && pi == null) {
            return null;
        }
        if (pi != null && pi.group(1) != null) {
            warnings.add("the four digits beside the pi mark, the number of the notified body, are not kept");
        }
        if (standard != null && standard.group(2) != null) {
            warnings.add("the edition of the standard is not kept");
        }
        return of(standard == null ? "PI" : "EN " + standard.group(1), cursor.take(FIFTEEN_YEARS) == null
                ? null
                : "P15Y");
    }

    private static Specification of(String family, @Nullable String detail) {
        return new Specification(Authority.ADR, family, detail, null, null);
    }
}
