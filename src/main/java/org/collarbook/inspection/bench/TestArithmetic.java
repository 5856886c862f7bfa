package org.collarbook.inspection.bench;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * The sums of a record. Each decision is made on exact numbers; what is shown is rounded away from the limit, so that a
 * figure never reads as if it kept a limit that it breaks.
 */
public final class TestArithmetic {

    /** 49 CFR 180.205(i): a cylinder is condemned above it, not at it. */
    public static final BigDecimal MOST_PERMANENT = BigDecimal.TEN;
    /** The same of a DOT-4E. */
    public static final BigDecimal MOST_PERMANENT_OF_4E = BigDecimal.valueOf(12);
    /** 49 CFR 180.209(c): at it, not above it. */
    public static final BigDecimal TARE_LOSS = BigDecimal.valueOf(5);

    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final BigDecimal A_TENTH_MORE = new BigDecimal("1.1");

    private TestArithmetic() {}

    /** Whether permanent over total expansion is more than so many percent. */
    public static boolean exceeds(Expansion measured, BigDecimal percent) {
        return measured.permanent().multiply(HUNDRED).compareTo(measured.total().multiply(percent)) > 0;
    }

    /** Permanent over total expansion, rounded up to the hundredth. */
    public static BigDecimal permanentPercent(Expansion measured) {
        return measured.permanent().multiply(HUNDRED).divide(measured.total(), 2, RoundingMode.CEILING);
    }

    /** The highest pressure at which a test is repeated: 10 % or 100 psi more, whichever is less. */
    public static BigDecimal mostAtRepeat(int firstPsig) {
        var first = BigDecimal.valueOf(firstPsig);
        return first.multiply(A_TENTH_MORE).min(first.add(HUNDRED));
    }

    /** Whether it has lost 5 % or more of the stamped tare weight. */
    public static boolean demandsRequalification(BigDecimal stampedLb, BigDecimal measuredLb) {
        return stampedLb.subtract(measuredLb).multiply(HUNDRED).compareTo(stampedLb.multiply(TARE_LOSS)) >= 0;
    }

    /** What it has lost of the stamped tare weight, rounded down to the hundredth; below nothing when it gained. */
    public static BigDecimal tareLossPercent(BigDecimal stampedLb, BigDecimal measuredLb) {
        return stampedLb.subtract(measuredLb).multiply(HUNDRED).divide(stampedLb, 2, RoundingMode.FLOOR);
    }
}
