package org.collarbook.regulation;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** The weight or volume of water that fills it, kept in the unit as stamped. */
public record WaterCapacity(BigDecimal amount, Unit unit) {

    /** A US gallon of water at 60 °F, 49 CFR 173.315(b) Note 1. */
    public static final BigDecimal POUNDS_PER_GALLON = new BigDecimal("8.32828");
    private static final BigDecimal KILOGRAMS_PER_POUND = new BigDecimal("0.45359237");
    private static final BigDecimal LITRES_PER_GALLON = new BigDecimal("3.785411784");
    private static final Pattern LABEL = Pattern.compile("(?:W ?\\.? ?C\\.?|WATER CAP(?:ACITY|\\.)?) ?[:=]? ?");
    private static final Pattern SHAPE = Pattern.compile("(\\d{1,12}(?:\\.\\d{1,12})?) ?([A-Z_. ]+)?");
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

        public String symbol() {
            return symbol;
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

    /** A number with a unit, and "WC" before or behind it where that is stamped. */
    public static ParseResult<WaterCapacity> tryParse(String text) {
        StampText stamp = StampText.of(text);
        String capitals = stamp.capitals();
        int start = labelEnd(capitals);
        Matcher matcher = SHAPE.matcher(capitals).region(start, capitals.length());
        if (!matcher.matches()) {
            return stamp.rejected(numberEnd(capitals, start), EXPECTED);
        }
        BigDecimal amount = new BigDecimal(matcher.group(1));
        String word = matcher.group(2) == null ? "" : matcher.group(2).replaceAll("[. _]", "");
        Unit unit = unit(word.endsWith("WC") ? word.substring(0, word.length() - 2) : word);
        if (unit == null || amount.signum() == 0) {
            int wrong = unit != null ? start : matcher.group(2) == null ? matcher.end(1) : matcher.start(2);
            return stamp.rejected(wrong, EXPECTED);
        }
        return new ParseResult.Parsed<>(new WaterCapacity(amount, unit), stamp.warnings());
    }

    /** The number of a stamp such as "WC 47.6" that leaves its unit to custom; null for any other. */
    public static @Nullable BigDecimal withoutUnit(String text) {
        String capitals = StampText.of(text).capitals();
        int start = labelEnd(capitals);
        Matcher matcher = SHAPE.matcher(capitals).region(start, capitals.length());
        boolean bare = start > 0 && matcher.matches() && matcher.group(2) == null;
        BigDecimal amount = bare ? new BigDecimal(matcher.group(1)) : BigDecimal.ZERO;
        return amount.signum() > 0 ? amount : null;
    }

    private static int labelEnd(String capitals) {
        Matcher label = LABEL.matcher(capitals);
        return label.lookingAt() ? label.end() : 0;
    }

    private static int numberEnd(String text, int start) {
        int at = start;
        while (at < text.length() && "0123456789.".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
        return at;
    }

    public static WaterCapacity parse(String text) {
        return tryParse(text).orElseThrow("water capacity", text);
    }

    private static @Nullable Unit unit(String word) {
        return switch (word) {
            case "LB", "LBS", "POUND", "POUNDS" -> Unit.LB;
            case "KG", "KGS", "KILO", "KILOS", "KILOGRAM", "KILOGRAMS" -> Unit.KG;
            case "L", "LITRE", "LITRES", "LITER", "LITERS" -> Unit.L;
            case "GAL", "GALS", "USGAL", "USGALS", "GALLON", "GALLONS", "USGALLON", "USGALLONS", "USG", "USWG" ->
                Unit.US_GAL;
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
