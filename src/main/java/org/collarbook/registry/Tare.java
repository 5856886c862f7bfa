package org.collarbook.registry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

import org.collarbook.regulation.Authority;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.StampText;
import org.jspecify.annotations.Nullable;

/** What it weighs empty, in pounds to the thousandth. A bare {@code TW} stamp is in pounds, as the trade stamps it. */
public record Tare(BigDecimal pounds) {

    static final String EXPECTED = "a weight from 0.1 to 1,000,000 lb, such as 17.0 lb, 7.7 kg or TW 17.0";
    /** A lone T, as it is stamped in Canada, asks for a unit; three digits behind a comma may be thousands. */
    private static final Pattern SHAPE = Pattern.compile("(?:(T ?\\.? ?W\\.?|TARE(?: (?:WT|WEIGHT)\\.?)?"
            + "|T\\.?(?=.*[A-Z#])) ?[:=]? ?)?"
            + "(\\d{1,7}(?:\\.\\d{1,6}|,\\d{1,2})?) ?(LBS?\\.?|POUNDS?|KGS?\\.?|KILO(?:GRAM)?S?|#)?");
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
        var stamp = StampText.of(text);
        var stamped = stamp.capitals();
        var shape = SHAPE.matcher(stamped);
        if (!shape.matches() || shape.group(1) == null && shape.group(3) == null) {
            return stamp.rejected(numberEnd(stamped), EXPECTED);
        }
        var amount = amount(shape);
        var pounds = isInKilograms(shape) ? fromKilograms(amount) : canonical(amount);
        if (!plausible(pounds)) {
            return stamp.rejected(shape.start(2), EXPECTED);
        }
        var warnings = stamp.warnings();
        if (shape.group(2).indexOf(',') >= 0) {
            warnings.add("the comma is read as the decimal point");
        }
        return new ParseResult.Parsed<>(new Tare(pounds), List.copyOf(warnings));
    }

    private static BigDecimal amount(Matcher shape) {
        return new BigDecimal(shape.group(2).replace(',', '.'));
    }

    private static boolean isInKilograms(Matcher shape) {
        var unit = shape.group(3);
        return unit != null && unit.startsWith("K");
    }

    /** The number as stamped, where kilograms stand beside it; null for any other text. */
    public static @Nullable BigDecimal inKilograms(String text) {
        var shape = SHAPE.matcher(StampText.of(text).capitals());
        return shape.matches() && isInKilograms(shape) ? amount(shape) : null;
    }

    /** The number of a stamp such as "TW 7.8" that leaves its unit to custom; null for any other text. */
    public static @Nullable BigDecimal withoutUnit(String text) {
        var shape = SHAPE.matcher(StampText.of(text).capitals());
        return shape.matches() && shape.group(1) != null && shape.group(3) == null ? amount(shape) : null;
    }

    /**
     * Without a unit it is in pounds, and a doubt says so where the trade does not stamp pounds: taken for the smaller
     * weight, an empty container never allows more gas.
     */
    public static Reading<Tare> read(String text, Collar collar) {
        var result = Reading.of(text, tryParse(text));
        if (!(result instanceof Reading.Read<Tare>(var _, var tare, var warnings)) || withoutUnit(text) == null) {
            return result;
        }
        boolean metric = collar.isUnder(Authority.TC, Authority.UN, Authority.ADR);
        if (collar.specification() != null && !metric) {
            return result;
        }
        var doubts = new ArrayList<>(warnings);
        doubts.add("no unit is stamped; read as pounds, as the trade stamps it" + (metric
                ? " in the United States; it may be kilograms"
                : ""));
        return new Reading.Read<>(text, tare, doubts);
    }

    private static BigDecimal fromKilograms(BigDecimal amount) {
        return canonical(amount.divide(KILOGRAMS_PER_POUND, 6, RoundingMode.HALF_EVEN));
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
