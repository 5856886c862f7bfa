package org.collarbook.regulation;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The most liquid that may be put in, by weight. */
public sealed interface FillingLimit {

    /** {@code maxNet} in pounds, rounded down to a hundredth: a limit is never rounded up. */
    record Limit(BigDecimal percent, BigDecimal maxNet, String ruleId, Citation citation) implements FillingLimit {

        /** Net and tare together, in pounds; null while the tare is unknown, for the reason MISSING_TARE. */
        public @Nullable BigDecimal maxGross(@Nullable BigDecimal tarePounds) {
            return tarePounds == null ? null : maxNet.add(tarePounds).setScale(2, RoundingMode.DOWN);
        }

        /** What the net weight takes up at 60 °F, in US gallons. */
        public BigDecimal gallonsAt60F(BigDecimal specificGravity) {
            return gallonsOf(maxNet, specificGravity.multiply(WaterCapacity.POUNDS_PER_GALLON));
        }

        /** The same at the liquid's own temperature; null where the correction is not held, see {@link LiquidVolume}. */
        public @Nullable BigDecimal gallonsAt(BigDecimal specificGravity, BigDecimal fahrenheit) {
            BigDecimal factor = LiquidVolume.factor(specificGravity, fahrenheit);
            return factor == null
                    ? null
                    : gallonsOf(maxNet, specificGravity.multiply(WaterCapacity.POUNDS_PER_GALLON).multiply(factor));
        }
    }

    record Unknown(List<Reason> reasons) implements FillingLimit {

        public Unknown {
            reasons = List.copyOf(reasons);
        }
    }

    /** Gallons of a liquid that weighs so many pounds a gallon. */
    static BigDecimal gallonsOf(BigDecimal pounds, BigDecimal poundsPerGallon) {
        return pounds.divide(poundsPerGallon, MathContext.DECIMAL64);
    }
}
