package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.Cases.TODAY;
import static org.collarbook.regulation.Cases.cylinder;
import static org.collarbook.regulation.Cases.stationary;

import java.math.BigDecimal;
import java.util.List;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CapacityAgainstTareTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();

    private static FillingLimit judged(FactsBuilder facts, @Nullable String tare) {
        FillingLimit limit = BOOK.fillingLimit(facts.build(), new BigDecimal("0.504"), TODAY);
        return CapacityAgainstTare.judge(limit, facts.build(), tare == null ? null : new BigDecimal(tare));
    }

    private static FactsBuilder of(String specification, String capacity) {
        return cylinder().specification(Specification.parse(specification))
                .waterCapacity(WaterCapacity.parse(capacity));
    }

    /** Sizes and typical tares of the trade, from memory; common practice, no source. */
    @ParameterizedTest
    @CsvSource({"DOT-4BA240, 11.9 lb, 7", "DOT-4BA240, 23.8 lb, 13", "DOT-4BA240, 47.6 lb, 17.2",
            "DOT-4BA240, 79.8 lb, 36", "DOT-4E240, 79.8 lb, 22", "DOT-4E240, 103.6 lb, 28", "DOT-4BW240, 143 lb, 50",
            "DOT-4BA240, 238 lb, 68", "DOT-4BW240, 477 lb, 140", "DOT-4BW240, 1000 lb, 320",
            "DOT-4BA240, 21.6 kg, 17.2",
            "DOT-3AA2015, 95 lb, 130", "DOT-4BA240, 103.2 lb, 17.2", "DOT-4BA240, 13.76 lb, 17.2"})
    void whatIsInUseKeepsItsLimit(String specification, String capacity, String tare) {
        assertThat(judged(of(specification, capacity), tare)).isInstanceOf(FillingLimit.Limit.class);
    }

    /** A digit too many, gallons or kilograms for pounds, a tare of another: ratios over 6 and under 0.8 (0.5). */
    @ParameterizedTest
    @CsvSource({"DOT-4BA240, 476 lb, 17.2", "DOT-4BA240, 47.6 gal, 17.2", "DOT-4BA240, 47.6 lb, 1.7",
            "DOT-4BA240, 47.6 kg, 17.2", "DOT-4BA240, 47.6 lb, 172", "DOT-4BA240, 103.3 lb, 17.2",
            "DOT-4BA240, 13.7 lb, 17.2", "DOT-3AA2015, 47.6 lb, 130", "DOT-4BA240, 47.6 lb, 0"})
    void whatCannotBelongTogetherHasNone(String specification, String capacity, String tare) {
        assertThat(judged(of(specification, capacity), tare)).isEqualTo(
                new FillingLimit.Unknown(List.of(ReasonCode.CAPACITY_CONTRADICTS_TARE.reason())));
    }

    @Test
    void nothingIsHeldAgainstATankNorAgainstATareThatIsNotKnown() {
        assertThat(judged(stationary(), "950")).isInstanceOf(FillingLimit.Limit.class);
        assertThat(judged(stationary(), "1")).isInstanceOf(FillingLimit.Limit.class);
        assertThat(judged(cylinder(), null)).isInstanceOf(FillingLimit.Limit.class);
    }

    @Test
    void whatHasNoLimitKeepsItsReasons() {
        FillingLimit none = BOOK.fillingLimit(cylinder().build(), null, TODAY);
        assertThat(CapacityAgainstTare.judge(none, cylinder().build(), BigDecimal.ONE)).isSameAs(none);
    }
}
