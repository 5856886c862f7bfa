package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.BOOK;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.FillingLimit;
import org.collarbook.regulation.FillingLimit.Limit;
import org.collarbook.regulation.WaterCapacity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * 42 % of the weight of the water is 82 to 83 % of the volume at 60 °F and 80 % at 40 °F: 49 CFR 173.304a(d)(1),
 * 173.315(b), and the worked example of 29 CFR 1910.110(b)(19)(v).
 */
@Trap(of = Catalogue.US, number = 14)
class FortyTwoPercentIsByWeightTest {

    private static Limit limit(String gravity) {
        FillingLimit limit = BOOK.fillingLimit(Cases.cylinder().waterCapacity(WaterCapacity.gallons("100")).build(),
                new BigDecimal(gravity), Cases.TODAY);
        assertThat(limit).isInstanceOf(Limit.class);
        return (Limit) limit;
    }

    /** Of 100 gallons so many are the percent of the volume. */
    @ParameterizedTest
    @CsvSource({"0.504,83.3", "0.508,82.7", "0.510,82.4"})
    void moreThanEightyByVolume(String gravity, String gallons) {
        assertThat(limit(gravity).percent()).isEqualByComparingTo("42");
        assertThat(limit(gravity).gallonsAt60F(new BigDecimal(gravity)).setScale(1, RoundingMode.HALF_UP))
                .isEqualByComparingTo(gallons);
    }

    @Test
    void theNextRowIsAnotherPercent() {
        assertThat(limit("0.503").percent()).isEqualByComparingTo("41");
        assertThat(limit("0.511").percent()).isEqualByComparingTo("43");
    }

    /** The gravity at 40 °F is 1.031 of that at 60 °F, as OSHA's example has it: 79.8 gallons of 100. */
    @Test
    void eightyAtFortyDegrees() {
        BigDecimal perGallon = new BigDecimal("0.510").multiply(new BigDecimal("1.031"))
                .multiply(WaterCapacity.POUNDS_PER_GALLON);
        assertThat(FillingLimit.gallonsOf(limit("0.510").maxNet(), perGallon).setScale(1, RoundingMode.DOWN))
                .isEqualByComparingTo("79.8");
    }
}
