package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.math.RoundingMode;

import org.collarbook.regulation.Basis;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/**
 * The check by volume beside the one by weight: the fixed level gauge spits liquid at 80 % full (common practice, no
 * source). The weight allowed takes up less than that when the liquid is colder than 40 °F or so, and more when warmer.
 */
record Gauge(int percentFull, BigDecimal gallons, Basis basis, String note) {

    private static final int PERCENT = 80;
    private static final String NOTE = "Percent of the volume, shown by the fixed level gauge, is another check than"
            + " percent of the water weight: stop at whichever is reached first.";

    /** Only beside a maximum by weight: alone it would be taken for one. */
    static @Nullable Gauge beside(@Nullable Most most, @Nullable WaterCapacity capacity) {
        return most == null || capacity == null
                ? null
                : new Gauge(PERCENT, capacity.toGallons().multiply(BigDecimal.valueOf(PERCENT)).movePointLeft(2)
                        .setScale(1, RoundingMode.DOWN), Basis.COMMON_PRACTICE, NOTE);
    }
}
