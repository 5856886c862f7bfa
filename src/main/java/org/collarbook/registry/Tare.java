package org.collarbook.registry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.regex.Pattern;

import org.collarbook.regulation.ParseResult;

/** What it weighs empty, in pounds to the thousandth. A bare {@code TW} stamp is in pounds, as the trade stamps it. */
public record Tare(BigDecimal pounds) {

    static final String EXPECTED = "a weight from 0.1 to 1,000,000 lb, such as 17.0 lb, 7.7 kg or TW 17.0";
    private static final Pattern SHAPE = Pattern.compile("(?:(T\\.?\\s*W\\.?|TARE)\\s*)?(\\d{1,7}(?:\\.\\d{1,6})?)\\s*"
            + "(LBS?\\.?|POUNDS?|KGS?\\.?|#)?");
    private static final BigDecimal KILOGRAMS_PER_POUND = new BigDecimal("0.45359237");
    private static final BigDecimal LEAST = new BigDecimal("0.1");
    private static final BigDecimal MOST = new BigDecimal("1000000");

    public Tare {
        pounds = canonical(pounds);
        if (!plausible(pounds)) {
            throw new IllegalArgumentException("tare " + pounds + ": expected " + EXPECTED);
        }
    }

    public static ParseResult<Tare> tryParse(String text) {
        var stamped = text.strip().toUpperCase(Locale.ROOT);
        var shape = SHAPE.matcher(stamped);
        if (!shape.matches() || shape.group(1) == null && shape.group(3) == null) {
            return ParseResult.rejectedAt(stamped, numberEnd(stamped), EXPECTED);
        }
        var amount = new BigDecimal(shape.group(2));
        var unit = shape.group(3);
        var pounds = canonical(unit != null && unit.startsWith("K")
                ? amount.divide(KILOGRAMS_PER_POUND, 6, RoundingMode.HALF_EVEN)
                : amount);
        return plausible(pounds)
                ? ParseResult.parsed(new Tare(pounds))
                : ParseResult.rejectedAt(stamped, shape.start(2), EXPECTED);
    }

    public static Tare parse(String text) {
        return tryParse(text).orElseThrow("tare", Letters.shown(text));
    }

    private static int numberEnd(String text) {
        int at = 0;
        while (at < text.length() && "0123456789.".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
        return at;
    }

    private static BigDecimal canonical(BigDecimal pounds) {
        var plain = pounds.setScale(3, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return plain.scale() < 0 ? plain.setScale(0) : plain;
    }

    private static boolean plausible(BigDecimal pounds) {
        return pounds.compareTo(LEAST) >= 0 && pounds.compareTo(MOST) <= 0;
    }

    @Override
    public String toString() {
        return pounds.toPlainString() + " lb";
    }
}
