package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.math.RoundingMode;

import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

/**
 * The most that may be in it after the fill: net by water capacity and filling density, gross on the scale with the
 * tare; and what room that takes at 60 °F, and at the liquid's temperature where that was told.
 */
public record Most(BigDecimal percentOfWaterCapacity, BigDecimal netLb, @Nullable BigDecimal grossLb,
        BigDecimal gallonsAt60F, @Nullable BigDecimal gallonsAtTemperature, Citation citation) {

    /** Null where no maximum is to be given. */
    public static @Nullable Most of(Judgement judgement) {
        var limit = judgement.most();
        var gravity = judgement.liquid().specificGravity();
        if (limit == null || gravity == null) {
            return null;
        }
        var tare = judgement.known().container().marks().tare();
        var temperature = judgement.liquid().temperatureF();
        var atTemperature = temperature == null ? null : limit.gallonsAt(gravity, temperature);
        return new Most(limit.percent(), limit.maxNet(), limit.maxGross(tare == null ? null : tare.value().pounds()),
                tenths(limit.gallonsAt60F(gravity)), atTemperature == null ? null : tenths(atTemperature),
                limit.citation());
    }

    private static BigDecimal tenths(BigDecimal gallons) {
        return gallons.setScale(1, RoundingMode.DOWN);
    }
}
