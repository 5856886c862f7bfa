package org.collarbook.custody;

import java.math.BigDecimal;
import java.math.RoundingMode;

import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/**
 * What is in a container after a fill, in pounds, and how that was found. {@code netLb} is all of it, the heel that was
 * there before included: 49 CFR 173.304a and 173.315 limit the contents, not the gas added. It is null where it cannot be
 * told, as of a fill on the scale without a tare.
 */
public record Contents(@Nullable BigDecimal netLb, @Nullable BigDecimal grossLb, @Nullable BigDecimal tareLb,
        @Nullable BigDecimal heelLb, @Nullable BigDecimal addedLb, @Nullable BigDecimal gallonsAdded,
        @Nullable BigDecimal liquidTemperatureF) {

    private static final int DECIMALS = 3;

    /** Gross less tare. */
    public static Contents weighed(BigDecimal gross, BigDecimal tare, @Nullable BigDecimal heel) {
        var net = gross.subtract(tare);
        return new Contents(net, gross, tare, heel, added(net, heel), null, null);
    }

    public static Contents stated(BigDecimal net, @Nullable BigDecimal heel) {
        return new Contents(net, null, null, heel, added(net, heel), null, null);
    }

    /**
     * The heel and what the meter counted: gallons at 60 °F, or at a temperature whose correction {@code factor} is
     * given. Rounded up to a thousandth of a pound, never in favour of more gas.
     */
    public static Contents metered(BigDecimal gallons, BigDecimal specificGravity, @Nullable BigDecimal fahrenheit,
            BigDecimal factor, BigDecimal heel) {
        var added = gallons.multiply(specificGravity).multiply(WaterCapacity.POUNDS_PER_GALLON).multiply(factor)
                .setScale(DECIMALS, RoundingMode.UP);
        return new Contents(heel.add(added), null, null, heel, added, gallons, fahrenheit);
    }

    /** What was read, where that does not tell how much is in it. */
    public static Contents unknown(@Nullable BigDecimal gross, @Nullable BigDecimal gallons,
            @Nullable BigDecimal fahrenheit, @Nullable BigDecimal heel) {
        return new Contents(null, gross, null, heel, null, gallons, fahrenheit);
    }

    private static @Nullable BigDecimal added(BigDecimal net, @Nullable BigDecimal heel) {
        return heel == null ? null : net.subtract(heel);
    }

    public boolean isMoreThan(BigDecimal most) {
        return netLb != null && netLb.compareTo(most) > 0;
    }
}
