package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SizeTests {

    /**
     * The trade's words; common practice, no source. That 47.6 lb of water makes a 20 lb cylinder, 23.8 a 10 lb one:
     * 23.8 x 0.42 = 9.996, 47.6 x 0.42 = 19.992 (svmatilda.blogspot.com). The other capacities are from memory.
     */
    @ParameterizedTest
    @CsvSource({"11.9 lb, 5 lb", "12.2 lb, 5 lb", "23.8 lb, 10 lb", "26.2 lb, 11 lb", "47.6 lb, 20 lb",
            "71.4 lb, 30 lb", "79.8 lb, 33.5 lb", "95.2 lb, 40 lb", "103.6 lb, 43.5 lb", "143 lb, 60 lb",
            "238 lb, 100 lb", "239 lb, 100 lb", "477 lb, 200 lb", "1000 lb, 420 lb", "21.6 kg, 20 lb",
            // both ends of 4 % about 20 lb: 19.2 / 0.42 = 45.714…, 20.8 / 0.42 = 49.523…
            "45.72 lb, 20 lb", "45.71 lb, 45.71 lb WC", "49.52 lb, 20 lb", "49.53 lb, 49.53 lb WC",
            "600 lb, 600 lb WC"})
    void cylindersGoByPoundsOfPropane(String capacity, String size) {
        assertThat(Size.of(ContainerKind.CYLINDER, WaterCapacity.parse(capacity))).hasToString(size);
    }

    @Test
    void theSmallerComeFirst() {
        var sizes = new ArrayList<>(List.of("unknown size", "120 gal", "100 lb", "60 lb WC", "5 lb", "33.5 lb"));
        sizes.sort(Size.BY_AMOUNT);
        assertThat(sizes).containsExactly("5 lb", "33.5 lb", "60 lb WC", "100 lb", "120 gal", "unknown size");
    }

    @ParameterizedTest
    @CsvSource({"499 gal, 499 gal", "1150 gal, 1150 gal", "119.5 gal, 120 gal", "119.4 gal, 119 gal",
            // 1,000 lb of water at 8.32828 lb a gallon (49 CFR 173.315(b) Note 1) is 120.07 gal
            "1000 lb, 120 gal"})
    void tanksGoByGallonsOfWater(String capacity, String size) {
        assertThat(Size.of(ContainerKind.STATIONARY_TANK, WaterCapacity.parse(capacity))).hasToString(size);
    }

    @ParameterizedTest
    @CsvSource({"20 lb, 20 lb", "' 33.5LB', 33.5 lb", "1000 gal, 1000 gal", "1000 Gal, 1000 gal", "60 lb WC, 60 lb WC",
            // a water capacity that is one of the trade's sizes is that size
            "47.6 lb WC, 20 lb"})
    void aSizeIsReadAsItIsWritten(String text, String size) {
        assertThat(Size.parse(text)).hasValueSatisfying(read -> assertThat(read).hasToString(size));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "20", "lb", "21 lb", "0 lb", "-20 lb", "20 kg", "76 L", "119.5 gal", "unknown size",
            "20 lb x", "1e3 gal", "٢٠ lb"})
    void whatNoContainerHasIsNoSize(String text) {
        assertThat(Size.parse(text)).isEmpty();
    }

    @Test
    void withoutACapacityTheSizeIsUnknown() {
        assertThat(Size.of(ContainerKind.CYLINDER, null)).isEqualTo(Size.UNKNOWN);
    }

    /** 49 CFR 178 subparts C (cylinders) and H (51), 180 subpart E (MC-331 and the 400 series), 173.315(k) (ASME). */
    @ParameterizedTest
    @CsvSource({"DOT-4BA240, CYLINDER", "TC-4BAM17, CYLINDER", "MC-331, CARGO_TANK", "MC-330, CARGO_TANK",
            "DOT-406, CARGO_TANK", "DOT-51, PORTABLE_TANK", "UN T50, PORTABLE_TANK", "UN ISO 9809-1, CYLINDER"})
    void aSpecificationBelongsToOneKind(String specification, ContainerKind kind) {
        assertThat(Kinds.of(Specification.parse(specification))).containsExactly(kind);
    }

    @Test
    void asmeIsNeverACylinderAndAPermitMayBeAnything() {
        assertThat(Kinds.of(Specification.ASME)).doesNotContain(ContainerKind.CYLINDER)
                .contains(ContainerKind.STATIONARY_TANK);
        assertThat(Kinds.of(Specification.parse("DOT-SP12345"))).containsExactly(ContainerKind.CYLINDER,
                ContainerKind.CARGO_TANK, ContainerKind.PORTABLE_TANK, ContainerKind.STATIONARY_TANK);
    }
}
