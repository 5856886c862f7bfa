package org.collarbook.registry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/**
 * What the trade calls a container's size. Cylinders go by the pounds of propane they hold, taken as 42 % of the water
 * capacity, tanks by gallons of water capacity. Common practice, no source; decides nothing about filling.
 */
public record Size(String word) {

    public static final Size UNKNOWN = new Size("unknown size");

    private static final List<BigDecimal> NOMINAL_POUNDS = List.of("5", "10", "11", "20", "30", "33.5", "40", "43.5",
            "60", "100", "200", "420").stream().map(BigDecimal::new).toList();
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

    /** The nominal sizes lie more than twice the tolerance apart, so at most one fits. */
    private static Size cylinder(WaterCapacity capacity) {
        var propane = capacity.toPounds().multiply(PROPANE_SHARE);
        return NOMINAL_POUNDS.stream()
                .filter(nominal -> propane.subtract(nominal).abs().compareTo(nominal.multiply(TOLERANCE)) <= 0)
                .findFirst().map(nominal -> new Size(nominal.toPlainString() + " lb"))
                .orElseGet(() -> new Size(capacity + " WC"));
    }

    @Override
    public String toString() {
        return word;
    }
}
