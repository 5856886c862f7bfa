package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.Cases.TODAY;
import static org.collarbook.regulation.Cases.cylinder;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;
import java.util.function.Consumer;

import org.collarbook.custody.Contents;
import org.collarbook.regulation.FillingLimit.Limit;
import org.junit.jupiter.api.Test;

/**
 * What must hold of a limit and of what was filled, in whatever unit they are told. The units are those of NIST Special
 * Publication 811, Appendix B (from memory): a pound is 0.45359237 kg and a US gallon 231 cubic inches, 3.785411784 L,
 * both exact. The water is that of 49 CFR 173.315(b) Note 1: 8.32828 lb a gallon at 60 °F.
 */
class FillArithmeticPropertiesTest {

    private static final RuleBook BOOK = FillingLimitTest.TABLE_ALONE;
    private static final long SEED = 20261125L;
    private static final int CASES = 5_000;
    private static final BigDecimal HUNDREDTH = new BigDecimal("0.01");
    private static final BigDecimal KILOGRAM = BigDecimal.ONE.divide(new BigDecimal("0.45359237"),
            MathContext.DECIMAL128);
    private static final BigDecimal GALLON = new BigDecimal("8.32828");
    private static final BigDecimal LITRE = GALLON.divide(new BigDecimal("3.785411784"), MathContext.DECIMAL128);

    private static void each(Consumer<Random> holds) {
        var random = new Random(SEED);
        for (int i = 0; i < CASES; i++) {
            holds.accept(random);
        }
    }

    private static BigDecimal between(Random random, double least, double most, int decimals) {
        return BigDecimal.valueOf(least + random.nextDouble() * (most - least)).setScale(decimals,
                RoundingMode.HALF_UP);
    }

    private static Limit limit(WaterCapacity capacity, BigDecimal gravity) {
        return (Limit) BOOK.fillingLimit(cylinder().waterCapacity(capacity).build(), gravity, TODAY);
    }

    /** The share of the same water in pounds, never rounded up, whatever unit is stamped. */
    @Test
    void aLimitIsTheShareOfTheSameWaterInAnyUnit() {
        each(random -> {
            var amount = between(random, 1, 1000, 2);
            var unit = WaterCapacity.Unit.values()[random.nextInt(4)];
            var inPounds = amount.multiply(switch (unit) {
                case LB -> BigDecimal.ONE;
                case KG -> KILOGRAM;
                case L -> LITRE;
                case US_GAL -> GALLON;
            });
            var limit = limit(new WaterCapacity(amount, unit), new BigDecimal("0.508"));
            var exact = inPounds.multiply(new BigDecimal("0.42"));
            assertThat(limit.maxNet()).as("%s %s, seed %d", amount, unit, SEED).isLessThanOrEqualTo(exact)
                    .isGreaterThan(exact.subtract(HUNDREDTH).subtract(new BigDecimal("1E-9")));
        });
    }

    /** More water never means less gas; a lighter liquid never means more of it. */
    @Test
    void aLimitGrowsWithTheWaterAndWithTheGravity() {
        each(random -> {
            var small = between(random, 1, 900, 1);
            var large = small.add(between(random, 0, 100, 1));
            var light = between(random, 0.271, 0.634, 3);
            var heavy = between(random, light.doubleValue(), 0.634, 3);
            assertThat(limit(WaterCapacity.pounds(small.toString()), light).maxNet())
                    .as("%s and %s lb, %s and %s, seed %d", small, large, light, heavy, SEED)
                    .isLessThanOrEqualTo(limit(WaterCapacity.pounds(large.toString()), heavy).maxNet());
        });
    }

    /** What the scale shows less the tare is what is in it: a heel never makes room for more. */
    @Test
    void theContentsAreGrossLessTareWhateverWasThereBefore() {
        each(random -> {
            var tare = between(random, 1, 100, 1);
            var net = between(random, 0.1, 500, 3);
            var heel = between(random, 0, net.doubleValue(), 3);
            var most = between(random, 0.1, 500, 2);
            var weighed = Contents.weighed(tare.add(net), tare, heel);
            var alone = Contents.weighed(tare.add(net), tare, null);
            assertThat(weighed.netLb()).isEqualByComparingTo(net).isEqualByComparingTo(alone.netLb());
            assertThat(weighed.isMoreThan(most)).isEqualTo(alone.isMoreThan(most)).isEqualTo(net.compareTo(most) > 0);
            assertThat(weighed.addedLb()).isEqualByComparingTo(net.subtract(heel));
        });
    }

    /** The volume that the limit takes up may be metered in, and a pint more may not, hot or cold. */
    @Test
    void theGallonsOfTheLimitFitAndAPintMoreDoesNot() {
        each(random -> {
            var gravity = between(random, 0.504, 0.510, 3);
            var fahrenheit = between(random, -40, 130, 1);
            var limit = limit(new WaterCapacity(between(random, 20, 1000, 1), WaterCapacity.Unit.LB), gravity);
            var factor = LiquidVolume.factor(gravity, fahrenheit);
            var gallons = limit.gallonsAt(gravity, fahrenheit);
            assertThat(factor).isNotNull();
            assertThat(gallons).isNotNull();
            // as a meter shows it, rounded down
            var shown = gallons.setScale(3, RoundingMode.DOWN);
            var fits = Contents.metered(shown, gravity, fahrenheit, factor, BigDecimal.ZERO);
            assertThat(fits.isMoreThan(limit.maxNet())).as("%s gal of %s at %s, seed %d", shown, gravity, fahrenheit,
                    SEED).isFalse();
            var more = Contents.metered(shown.add(new BigDecimal("0.125")), gravity, fahrenheit, factor,
                    BigDecimal.ZERO);
            assertThat(more.isMoreThan(limit.maxNet())).isTrue();
            var onAHeel = Contents.metered(shown, gravity, fahrenheit, factor, new BigDecimal("0.25"));
            assertThat(onAHeel.isMoreThan(limit.maxNet())).isTrue();
        });
    }

    /** The tare is added as it stands: the scale shows no more than net and tare together. */
    @Test
    void theGrossIsNeverMoreThanNetAndTare() {
        each(random -> {
            var limit = limit(WaterCapacity.pounds(between(random, 1, 1000, 1).toString()), new BigDecimal("0.508"));
            var tare = between(random, 0.5, 300, 3);
            assertThat(limit.maxGross(tare)).isLessThanOrEqualTo(limit.maxNet().add(tare))
                    .isGreaterThan(limit.maxNet().add(tare).subtract(HUNDREDTH));
        });
    }
}
