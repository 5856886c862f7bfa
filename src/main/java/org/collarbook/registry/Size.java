package org.collarbook.registry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/**
 * What the trade calls a container's size. Cylinders go by the pounds of propane they hold, taken as 42 % of the water
 * capacity, tanks by gallons of water capacity. Common practice, no source; decides nothing about filling.
 */
public record Size(String word) {

    public static final Size UNKNOWN = new Size("unknown size");

    public static final String ACCEPTED = "a size as containers have it: 20 lb, 33.5 lb, 1000 gal, or a water capacity"
            + " that is none of these, such as 60 lb WC";

    /** Words of sizes, the smaller first; what tells no amount comes last. */
    public static final Comparator<String> BY_AMOUNT = Comparator.comparing(Size::amount).thenComparing(
            Comparator.naturalOrder());

    private static final BigDecimal NO_AMOUNT = BigDecimal.valueOf(Long.MAX_VALUE);
    private static final List<BigDecimal> NOMINAL_POUNDS = List.of("5", "10", "11", "20", "30", "33.5", "40", "43.5",
            "60", "100", "200", "420").stream().map(BigDecimal::new).toList();
    private static final Pattern SHAPE = Pattern.compile("[0-9.]+ *(?:lb|gal|kg|L) *(?<wc>WC)?",
            Pattern.CASE_INSENSITIVE);
    private static final BigDecimal PROPANE_SHARE = new BigDecimal("0.42");
    private static final BigDecimal TOLERANCE = new BigDecimal("0.04");

    public static Size of(ContainerKind kind, @Nullable WaterCapacity capacity) {
        if (capacity == null) {
            return UNKNOWN;
        }
        return switch (kind) {
            case CYLINDER -> cylinder(capacity);
            case CARGO_TANK, PORTABLE_TANK, STATIONARY_TANK, EXTINGUISHER -> new Size(capacity.toGallons()
                    .setScale(0, RoundingMode.HALF_UP).toPlainString() + " gal");
        };
    }

    /** A size as {@link #of} writes it, whatever its letters and spaces; empty when no container has such a size. */
    public static Optional<Size> parse(String text) {
        var shape = SHAPE.matcher(text.strip());
        if (!shape.matches() || !(WaterCapacity.tryParse(text) instanceof ParseResult.Parsed<WaterCapacity> read)) {
            return Optional.empty();
        }
        var capacity = read.value();
        if (shape.group("wc") != null) {
            return Optional.of(cylinder(capacity));
        }
        return switch (capacity.unit()) {
            case LB -> NOMINAL_POUNDS.stream().filter(nominal -> nominal.compareTo(capacity.amount()) == 0).findFirst()
                    .map(Size::pounds);
            case US_GAL -> Optional.of(of(ContainerKind.STATIONARY_TANK, capacity))
                    .filter(size -> capacity.amount().stripTrailingZeros().scale() <= 0);
            case KG, L -> Optional.empty();
        };
    }

    /** In pounds of water, but for the pounds of propane that a nominal size tells: near enough to put them in order. */
    private static BigDecimal amount(String word) {
        return WaterCapacity.tryParse(word) instanceof ParseResult.Parsed<WaterCapacity> read
                ? read.value().toPounds()
                : NO_AMOUNT;
    }

    private static Size pounds(BigDecimal nominal) {
        return new Size(nominal.toPlainString() + " lb");
    }

    /** The nominal sizes lie more than twice the tolerance apart, so at most one fits. */
    private static Size cylinder(WaterCapacity capacity) {
        var propane = capacity.toPounds().multiply(PROPANE_SHARE);
        return NOMINAL_POUNDS.stream()
                .filter(nominal -> propane.subtract(nominal).abs().compareTo(nominal.multiply(TOLERANCE)) <= 0)
                .findFirst().map(Size::pounds)
                .orElseGet(() -> new Size(capacity + " WC"));
    }

    @Override
    public String toString() {
        return word;
    }
}
