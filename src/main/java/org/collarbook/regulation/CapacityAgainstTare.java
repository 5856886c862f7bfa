package org.collarbook.regulation;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Whether a cylinder's water capacity and its tare can both be right: one in the wrong unit, or with a digit too many,
 * makes a limit that is too high.
 */
public final class CapacityAgainstTare {

    /**
     * Pounds of water to a pound of tare. Common practice, no source: those of propane cylinders in use are from 1.6
     * (5 lb) to 3.8 (aluminium, 43.5 lb), composites near 5, and the seamless ones of series 3, which are made for higher
     * pressures, from 0.6.
     */
    private static final BigDecimal MOST = new BigDecimal("6");
    private static final BigDecimal LEAST = new BigDecimal("0.8");
    private static final BigDecimal LEAST_OF_SERIES_3 = new BigDecimal("0.5");

    private CapacityAgainstTare() {}

    /** The limit as it was worked out, unless the capacity that it rests on cannot belong to the tare. */
    public static FillingLimit judge(FillingLimit limit, Facts facts, @Nullable BigDecimal tarePounds) {
        WaterCapacity capacity = facts.waterCapacity();
        boolean asked = limit instanceof FillingLimit.Limit && facts.kind() == ContainerKind.CYLINDER
                && capacity != null && tarePounds != null;
        return asked && !canBelong(capacity.toPounds(), tarePounds, facts.specification())
                ? new FillingLimit.Unknown(List.of(ReasonCode.CAPACITY_CONTRADICTS_TARE.reason()))
                : limit;
    }

    private static boolean canBelong(BigDecimal water, BigDecimal tare, @Nullable Specification specification) {
        boolean series3 = specification != null && specification.family().startsWith("3");
        BigDecimal least = series3 ? LEAST_OF_SERIES_3 : LEAST;
        return water.compareTo(tare.multiply(MOST)) <= 0 && water.compareTo(tare.multiply(least)) >= 0;
    }
}
