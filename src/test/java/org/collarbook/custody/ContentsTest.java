package org.collarbook.custody;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Random;

import org.collarbook.registry.Tare;
import org.collarbook.regulation.WaterCapacity;
import org.junit.jupiter.api.Test;

/** What is in it after the fill, whatever part was there before, and in whatever unit its marks are. */
class ContentsTest {

    private static final long SEED = 7301L;
    private static final BigDecimal ZERO = BigDecimal.ZERO;
    private static final BigDecimal ONE = BigDecimal.ONE;
    private static final BigDecimal GRAVITY = new BigDecimal("0.508");

    private static BigDecimal upTo(Random random, int most) {
        return BigDecimal.valueOf(1 + random.nextInt(most * 1000), 3);
    }

    /** A litre is 1/3.785411784 gallon, a kilogram 1/0.45359237 lb, both exact by definition. */
    @Test
    void theSameContentsHoweverTheyAreMeasured() {
        var random = new Random(SEED);
        for (int i = 0; i < 5_000; i++) {
            var tare = upTo(random, 80);
            var heel = upTo(random, 40);
            var gallons = upTo(random, 30);
            var metered = Contents.metered(gallons, GRAVITY, null, ONE, heel);
            var weighed = Contents.weighed(tare.add(metered.netLb()), tare, heel);
            assertThat(weighed.netLb()).as("seed %d", SEED).isEqualByComparingTo(metered.netLb());
            assertThat(weighed.addedLb()).as("seed %d", SEED).isEqualByComparingTo(metered.addedLb());
            var litres = gallons.multiply(new BigDecimal("3.785411784"));
            var water = new WaterCapacity(litres, WaterCapacity.Unit.L).toPounds();
            assertThat(water.multiply(GRAVITY).doubleValue()).as("seed %d", SEED)
                    .isCloseTo(metered.addedLb().doubleValue(), org.assertj.core.data.Offset.offset(0.0011));
        }
    }

    @Test
    void aHeelCountsInFull() {
        var random = new Random(SEED);
        for (int i = 0; i < 5_000; i++) {
            var gallons = upTo(random, 30);
            var heel = upTo(random, 40);
            var empty = Contents.metered(gallons, GRAVITY, null, ONE, ZERO);
            var heeled = Contents.metered(gallons, GRAVITY, null, ONE, heel);
            assertThat(heeled.netLb().subtract(empty.netLb())).as("seed %d", SEED).isEqualByComparingTo(heel);
            // topping up what was weighed does not care how much of it is new
            var gross = heeled.netLb().add(new BigDecimal("17"));
            assertThat(Contents.weighed(gross, new BigDecimal("17"), heel).netLb())
                    .isEqualByComparingTo(Contents.weighed(gross, new BigDecimal("17"), null).netLb());
        }
    }

    /** 8.32828 lb of water a gallon: 49 CFR 173.315(b) Note 1. */
    @Test
    void aMeterIsNeverReadInFavourOfMoreGas() {
        var random = new Random(SEED);
        for (int i = 0; i < 5_000; i++) {
            var gallons = upTo(random, 3000);
            var factor = new BigDecimal("0.87").add(BigDecimal.valueOf(random.nextInt(27_000), 5));
            var exact = gallons.multiply(GRAVITY).multiply(new BigDecimal("8.32828")).multiply(factor);
            var counted = Contents.metered(gallons, GRAVITY, new BigDecimal("40"), factor, ZERO).netLb();
            assertThat(counted).as("seed %d", SEED).isGreaterThanOrEqualTo(exact)
                    .isLessThanOrEqualTo(exact.add(new BigDecimal("0.001")));
        }
    }

    @Test
    void aTareStampedInKilogramsWeighsTheSame() {
        var random = new Random(SEED);
        for (int i = 0; i < 2_000; i++) {
            var kilograms = BigDecimal.valueOf(10 + random.nextInt(500), 1);
            var pounds = kilograms.divide(new BigDecimal("0.45359237"), MathContext.DECIMAL64);
            assertThat(Tare.parse(kilograms + " kg").pounds().doubleValue()).as("seed %d", SEED)
                    .isCloseTo(pounds.doubleValue(), org.assertj.core.data.Offset.offset(0.0006));
        }
    }

    @Test
    void theLimitItselfIsNotTooMuch() {
        var most = new BigDecimal("19.99");
        assertThat(Contents.stated(new BigDecimal("19.99"), null).isMoreThan(most)).isFalse();
        assertThat(Contents.stated(new BigDecimal("19.990"), null).isMoreThan(most)).isFalse();
        assertThat(Contents.stated(new BigDecimal("19.991"), null).isMoreThan(most)).isTrue();
    }
}
