package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.Cases.TODAY;
import static org.collarbook.regulation.Cases.cylinder;
import static org.collarbook.regulation.Cases.stationary;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.List;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A limit that rests on what cannot be, or on a pressure that nobody knows, is none. */
class DoubtedLimitTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();

    private static FactsBuilder made(String specification) {
        return cylinder().specification(Specification.parse(specification)).manufactured(YearMonth.of(2020, 6));
    }

    private static FillingLimit limit(FactsBuilder facts, String gravity) {
        return BOOK.fillingLimit(facts.build(), new BigDecimal(gravity), TODAY);
    }

    private static List<Reason> why(FillingLimit limit) {
        return limit instanceof FillingLimit.Unknown(var reasons) ? reasons : List.of();
    }

    /**
     * 49 CFR 178.50(a), 178.51(a), 178.61(a) and 178.68(a), edition of 2019: "not over 1,000 pounds water capacity
     * (nominal)". The 5 % more for "nominal" are common practice, no source.
     */
    @ParameterizedTest
    @CsvSource({"DOT-4B240, 1050.1 lb", "DOT-4BA240, 4760 lb", "DOT-4BA240, 1000 gal", "DOT-4BW240, 126.1 gal",
            "DOT-4E240, 477 kg"})
    void moreWaterThanTheSpecificationHasNoLimitAndNoYes(String specification, String capacity) {
        FactsBuilder facts = made(specification).waterCapacity(WaterCapacity.parse(capacity));
        assertThat(why(limit(facts, "0.508"))).singleElement().satisfies(reason -> {
            assertThat(reason.code()).isEqualTo(ReasonCode.CAPACITY_NOT_OF_SPECIFICATION);
            assertThat(reason.citation()).isNotNull().extracting(Citation::section).asString().contains("178.51(a)");
        });
        Assessment assessment = BOOK.assess(facts.build(), TODAY);
        assertThat(assessment.mayFill().reasons()).extracting(Reason::code)
                .containsExactly(ReasonCode.CAPACITY_NOT_OF_SPECIFICATION);
        assertThat(assessment.mayCarry().allowed()).as("%s", assessment).isTrue();
    }

    /** The largest of the trade, 420 lb of propane, is stamped with about 1,000 lb; common practice, no source. */
    @ParameterizedTest
    @CsvSource({"DOT-4B240, 1000 lb", "DOT-4BA240, 1050 lb", "DOT-4BW240, 126 gal", "DOT-4E240, 47.6 lb",
            "DOT-3AA1800, 1100 lb"})
    void whatItCanHaveKeepsItsLimit(String specification, String capacity) {
        FactsBuilder facts = made(specification).waterCapacity(WaterCapacity.parse(capacity));
        assertThat(limit(facts, "0.508")).isInstanceOf(FillingLimit.Limit.class);
        assertThat(BOOK.assess(facts.build(), TODAY).gives(ReasonCode.CAPACITY_NOT_OF_SPECIFICATION)).isFalse();
    }

    /**
     * 49 CFR 173.301(a)(8): at 131 °F at most 5/4 of the service pressure. 290 psig is what commercial propane has, whose
     * gravity is 0.504 (NFPA 58's annex, from memory; 173.304a(d)(4) asks for as much where it is filled by volume).
     */
    @ParameterizedTest
    @ValueSource(strings = {"0.271", "0.30", "0.356", "0.40", "0.47", "0.495", "0.500", "0.5029"})
    void aLighterLiquidThanPropaneHasNoLimitWhateverThePressure(String gravity) {
        for (String specification : List.of("DOT-4BA240", "DOT-4BW480", "DOT-4E240", "DOT-3AA1800", "DOT-4B500")) {
            assertThat(why(limit(made(specification), gravity))).as(specification).singleElement().satisfies(reason -> {
                assertThat(reason.code()).isEqualTo(ReasonCode.PRESSURE_NOT_KNOWN_FOR_GRAVITY);
                assertThat(reason.citation()).isNotNull().extracting(Citation::section).isEqualTo("173.301(a)(8)");
            });
        }
    }

    /** 0.504 to 0.510 is propane by the filling density table; butane, near 0.584, has less pressure (from memory). */
    @ParameterizedTest
    @CsvSource({"0.503, 41", "0.504, 42", "0.508, 42", "0.510, 42", "0.584, 51"})
    void propaneAndWhatIsHeavierKeepTheirs(String gravity, String percent) {
        assertThat(limit(made("DOT-4BA240"), gravity)).isInstanceOfSatisfying(FillingLimit.Limit.class,
                found -> assertThat(found.percent()).isEqualByComparingTo(percent));
    }

    /** 173.301(a)(8) is of cylinders; the table of 173.315(b) for tanks begins at 0.496. */
    @Test
    void aTankIsAskedItsOwnTable() {
        assertThat(limit(stationary(), "0.500")).isInstanceOf(FillingLimit.Limit.class);
        assertThat(why(limit(stationary(), "0.495"))).extracting(Reason::code)
                .containsExactly(ReasonCode.SPECIFIC_GRAVITY_OUT_OF_TABLE);
    }

    @Test
    void bothDoubtsAreTold() {
        FactsBuilder facts = made("DOT-4BA240").waterCapacity(WaterCapacity.pounds("4760"));
        assertThat(why(limit(facts, "0.40"))).extracting(Reason::code).containsExactlyInAnyOrder(
                ReasonCode.CAPACITY_NOT_OF_SPECIFICATION, ReasonCode.PRESSURE_NOT_KNOWN_FOR_GRAVITY);
    }
}
