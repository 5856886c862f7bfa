package org.collarbook.regulation;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The weight or volume of water that fills it, kept in the unit as stamped. */
public record WaterCapacity(BigDecimal amount, Unit unit) {

    /** A US gallon of water at 60 °F, 49 CFR 173.315(b) Note 1. */
    public static final BigDecimal POUNDS_PER_GALLON = new BigDecimal("8.32828");
    private static final BigDecimal KILOGRAMS_PER_POUND = new BigDecimal("0.45359237");
    private static final BigDecimal LITRES_PER_GALLON = new BigDecimal("3.785411784");
    private static final Pattern SHAPE = Pattern.compile("(\\d{1,12}(?:\\.\\d{1,12})?)\\s*([A-Za-z_. ]+)");
    private static final String EXPECTED = "a positive number and a unit: lb, kg, L or gal";

    public enum Unit {
        LB("lb"),
        KG("kg"),
        L("L"),
        US_GAL("gal");

        private final String symbol;

        Unit(String symbol) {
            this.symbol = symbol;
        }
    }

    public WaterCapacity {
        if (amount.signum() <= 0) {
            throw new IllegalArgumentException("water capacity " + amount + ": expected more than nothing");
        }
    }

    public static WaterCapacity pounds(String amount) {
        return new WaterCapacity(new BigDecimal(amount), Unit.LB);
    }

    public static WaterCapacity gallons(String amount) {
        return new WaterCapacity(new BigDecimal(amount), Unit.US_GAL);
    }

    public static ParseResult<WaterCapacity> tryParse(String text) {
        String stripped = text.strip();
        Matcher matcher = SHAPE.matcher(stripped);
        if (!matcher.matches()) {
            int digits = 0;
            while (digits < stripped.length() && (Character.isDigit(stripped.charAt(digits))
                    || stripped.charAt(digits) == '.')) {
                digits++;
            }
            return ParseResult.rejectedAt(stripped, digits, EXPECTED);
        }
        BigDecimal amount = new BigDecimal(matcher.group(1));
        Unit unit = unit(matcher.group(2).replaceAll("[. _]", "").toLowerCase(Locale.ROOT));
        if (unit == null || amount.signum() == 0) {
            return ParseResult.rejectedAt(stripped, unit == null ? matcher.start(2) : 0, EXPECTED);
        }
        return ParseResult.parsed(new WaterCapacity(amount, unit));
    }

    public static WaterCapacity parse(String text) {
        return tryParse(text).orElseThrow("water capacity", text);
    }

    private static @Nullable Unit unit(String word) {
        return switch (word) {
            case "lb", "lbs", "pound", "pounds" -> Unit.LB;
            case "kg", "kgs" -> Unit.KG;
            case "l", "litre", "litres", "liter", "liters" -> Unit.L;
            case "gal", "gals", "usgal", "gallon", "gallons", "usg", "uswg" -> Unit.US_GAL;
            default -> null;
        };
    }

    /** In pounds of water at 60 °F; exact for pounds and gallons, to 16 digits for the metric units. */
    public BigDecimal toPounds() {
        return switch (unit) {
            case LB -> amount;
            case US_GAL -> amount.multiply(POUNDS_PER_GALLON);
            case KG -> amount.divide(KILOGRAMS_PER_POUND, MathContext.DECIMAL64);
            case L -> amount.multiply(POUNDS_PER_GALLON).divide(LITRES_PER_GALLON, MathContext.DECIMAL64);
        };
    }

    public BigDecimal toGallons() {
        return unit == Unit.US_GAL ? amount : toPounds().divide(POUNDS_PER_GALLON, MathContext.DECIMAL64);
    }

    @Override
    public String toString() {
        return amount.toPlainString() + " " + unit.symbol;
    }
}
