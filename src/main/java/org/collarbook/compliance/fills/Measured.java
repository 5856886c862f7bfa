package org.collarbook.compliance.fills;

import java.math.BigDecimal;
import java.util.List;

import org.collarbook.compliance.fillcheck.Liquid;
import org.collarbook.custody.Contents;
import org.collarbook.platform.Inputs;
import org.collarbook.registry.Tare;
import org.collarbook.regulation.LiquidVolume;
import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;

/** What is in a container after a fill, or the facts that are missing to tell. */
sealed interface Measured {

    record Known(Contents contents) implements Measured {}

    record Unknown(List<ReasonCode> because) implements Measured {

        public Unknown {
            because = List.copyOf(because);
        }
    }

    /** {@code inputs} learn of weights that contradict each other. */
    static Measured of(Measure measure, @Nullable Tare tare, Liquid liquid, Inputs inputs) {
        return switch (measure) {
            case Measure.Weighed(var gross, var heel) -> tare == null
                    ? new Unknown(List.of(ReasonCode.MISSING_TARE))
                    : weighed(gross, tare.pounds(), heel, inputs);
            case Measure.Stated(var net, var heel) -> new Known(Contents.stated(net, heel));
            case Measure.Metered metered -> metered(metered, liquid);
        };
    }

    private static Measured weighed(BigDecimal gross, BigDecimal tare, @Nullable BigDecimal heel, Inputs inputs) {
        if (gross.compareTo(tare) <= 0) {
            inputs.refuse("/grossLb", "BELOW_TARE", gross.toString(), "more than the recorded tare, " + tare + " lb");
        } else if (heel != null && heel.compareTo(gross.subtract(tare)) > 0) {
            inputs.refuse("/heelLb", "OUT_OF_RANGE", heel.toString(),
                    "not more than the gross less the tare, " + gross.subtract(tare) + " lb");
        }
        return new Known(Contents.weighed(gross, tare, heel));
    }

    private static Measured metered(Measure.Metered metered, Liquid liquid) {
        var gravity = liquid.specificGravity();
        if (gravity == null) {
            return new Unknown(List.of(ReasonCode.MISSING_SPECIFIC_GRAVITY));
        }
        var temperature = liquid.temperatureF();
        var factor = temperature == null ? BigDecimal.ONE : LiquidVolume.factor(gravity, temperature);
        return factor == null
                ? new Unknown(List.of(ReasonCode.VOLUME_NOT_CORRECTED))
                : new Known(Contents.metered(metered.gallons(), gravity, temperature, factor, metered.heelLb()));
    }
}
