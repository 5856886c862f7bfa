package org.collarbook.inspection.bench;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** The pressures of 49 CFR 180.209(a) Table 1, as the edition of 2019 and the table after 85 FR 85380 both give them. */
public final class MinimumTestPressure {

    /** So many times the service pressure, as a fraction. */
    private record Multiple(int numerator, int denominator, String words) {}

    private static final Multiple FIVE_THIRDS = new Multiple(5, 3, "5/3 times");
    private static final Multiple TWICE = new Multiple(2, 1, "2 times");

    private static final int OF_DOT_3 = 3000;

    private static final Map<String, Multiple> TABLE = Map.ofEntries(Map.entry("3A", FIVE_THIRDS),
            Map.entry("3AA", FIVE_THIRDS), Map.entry("3A480X", FIVE_THIRDS), Map.entry("3AL", FIVE_THIRDS),
            Map.entry("3AX", FIVE_THIRDS), Map.entry("3AAX", FIVE_THIRDS), Map.entry("3HT", FIVE_THIRDS),
            Map.entry("3T", FIVE_THIRDS), Map.entry("3B", TWICE), Map.entry("3BN", TWICE),
            Map.entry("4AA480", TWICE), Map.entry("4B", TWICE), Map.entry("4BA", TWICE), Map.entry("4BW", TWICE),
            Map.entry("4B240ET", TWICE), Map.entry("4D", TWICE), Map.entry("4DA", TWICE), Map.entry("4DS", TWICE),
            Map.entry("4E", TWICE));

    private MinimumTestPressure() {}

    /** Null where the table gives none: 3E, 4L, 8, and whatever is not in it. */
    public static @Nullable BigDecimal of(String family, int servicePsig) {
        if (family.equals("3")) {
            return BigDecimal.valueOf(OF_DOT_3);
        }
        var multiple = TABLE.get(family);
        return multiple == null
                ? null
                : BigDecimal.valueOf((long) servicePsig * multiple.numerator)
                        .divide(BigDecimal.valueOf(multiple.denominator), 2, RoundingMode.CEILING);
    }

    /** The pressure is whole pounds, so that the rounding of {@link #of} decides nothing. */
    public static boolean isReached(BigDecimal minimum, int testPsig) {
        return BigDecimal.valueOf(testPsig).compareTo(minimum) >= 0;
    }

    /** As in "2 times the marked 240 psig". */
    static String words(String family, int servicePsig) {
        var multiple = TABLE.get(family);
        return multiple == null ? "for this specification" : multiple.words + " the marked " + servicePsig + " psig";
    }
}
