package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.Cases.TODAY;
import static org.collarbook.regulation.Cases.cylinder;
import static org.collarbook.regulation.Cases.stationary;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LiquidVolumeTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final BigDecimal PROPANE = new BigDecimal("0.508");

    private static @Nullable BigDecimal factor(String fahrenheit) {
        return LiquidVolume.factor(PROPANE, new BigDecimal(fahrenheit));
    }

    private static FillingLimit.Limit limit(FactsBuilder facts, String gravity) {
        return (FillingLimit.Limit) BOOK.fillingLimit(facts.build(), new BigDecimal(gravity), TODAY);
    }

    /** 29 CFR 1910.110(b)(19)(v): the factor at 40 °F for gravity 0.510 is 1.031, from its Table H-29. */
    @Test
    void agreesWithTheFactorOfTheRegulation() {
        assertThat(LiquidVolume.factor(new BigDecimal("0.510"), new BigDecimal("40")))
                .isCloseTo(new BigDecimal("1.031"), org.assertj.core.data.Offset.offset(new BigDecimal("0.0005")));
    }

    /** The example there: a 100 gallon tank above ground, 4200 / 52.6 = 79.8 gallons at 40 °F; 42 / 0.510 at 60 °F. */
    @Test
    void theWorkedExampleOfTheRegulation() {
        var limit = limit(stationary().waterCapacity(WaterCapacity.gallons("100")), "0.510");
        var gravity = new BigDecimal("0.510");
        assertThat(limit.gallonsAt(gravity, new BigDecimal("40")).setScale(1, RoundingMode.DOWN))
                .isEqualByComparingTo("79.8");
        assertThat(limit.gallonsAt(gravity, new BigDecimal("60")).setScale(1, RoundingMode.HALF_UP))
                .isEqualByComparingTo("82.4");
    }

    /** "Typical pounds per gallon" of propane in the same place: 4.37 at 40 °F, 4.31 at 50 °F. */
    @ParameterizedTest
    @CsvSource({"40, 4.37", "50, 4.31"})
    void typicalPoundsAGallon(String fahrenheit, String pounds) {
        var gallon = PROPANE.multiply(WaterCapacity.POUNDS_PER_GALLON).multiply(factor(fahrenheit));
        assertThat(gallon.doubleValue()).isCloseTo(Double.parseDouble(pounds),
                org.assertj.core.data.Offset.offset(0.015));
    }

    /**
     * Liquid propane in kg/m³: 489.4 at 300 K and 528.6 at 273.15 K at saturation, NIST Chemistry WebBook, from memory;
     * within a fifth of a percent of 506.687 at 60 °F times the factor.
     */
    @ParameterizedTest
    @CsvSource({"80.3, 489.4", "32, 528.6"})
    void densityOfAGeneralReference(String fahrenheit, double density) {
        assertThat(factor(fahrenheit).doubleValue() * 506.687).isCloseTo(density,
                org.assertj.core.data.Percentage.withPercentage(0.2));
    }

    /** 42 % by weight is more than 80 % by volume at 60 °F and less when cold: it is not the same as "80 % full". */
    @Test
    void percentByWeightIsNotPercentByVolume() {
        var limit = limit(cylinder(), "0.508");
        var eighty = cylinder().build().waterCapacity().toGallons().multiply(new BigDecimal("0.8"));
        assertThat(limit.gallonsAt60F(PROPANE)).isGreaterThan(eighty);
        assertThat(limit.gallonsAt(PROPANE, new BigDecimal("-20"))).isLessThan(eighty);
    }

    @Test
    void warmLiquidTakesMoreRoomWithoutAJump() {
        long seed = 20261125L;
        var random = new Random(seed);
        for (int i = 0; i < 5_000; i++) {
            var cold = BigDecimal.valueOf(random.nextInt(1690) - 400, 1);
            var warm = cold.add(new BigDecimal("0.1"));
            var step = LiquidVolume.factor(PROPANE, cold).subtract(LiquidVolume.factor(PROPANE, warm));
            assertThat(step).as("seed %d at %s °F", seed, cold).isPositive().isLessThan(new BigDecimal("0.0003"));
        }
        assertThat(factor("60")).isEqualByComparingTo("1");
        assertThat(factor("130")).isEqualByComparingTo("0.86822");
        assertThat(factor("-40")).isEqualByComparingTo("1.1416");
    }

    @ParameterizedTest
    @CsvSource({"0.508, 130.1", "0.508, -40.1", "0.495, 60", "0.520, 60"})
    void whatIsNotHeldIsNotGuessed(String gravity, String fahrenheit) {
        assertThat(LiquidVolume.factor(new BigDecimal(gravity), new BigDecimal(fahrenheit))).isNull();
    }

    /**
     * The underground column of the filling density tables is a point higher (46 for .504 to .510, WAC 296-307-41037
     * Table U-4): where the tank stands is not relied on, so that unknown takes the lower.
     */
    @ParameterizedTest
    @CsvSource(value = {"null", "ABOVEGROUND", "UNDERGROUND"}, nullValues = "null")
    void whereItStandsNeverGivesMore(@Nullable Installation installation) {
        assertThat(limit(stationary().waterCapacity(WaterCapacity.gallons("500")).installation(installation), "0.508")
                .percent()).isEqualByComparingTo("42");
    }

    @ParameterizedTest
    @CsvSource({"0.508, true", "0.5080, true", "0.50800000, true", "5.08E-1, true", "0.50805, false", "0, false",
            "1, false", "-0.5, false", "1E+9, false", "1E-999999999, false", "1E+999999999, false"})
    void gravities(String text, boolean plausible) {
        assertThat(SpecificGravity.isPlausible(new BigDecimal(text))).isEqualTo(plausible);
    }
}
