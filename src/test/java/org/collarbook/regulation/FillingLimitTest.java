package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.Cases.TODAY;
import static org.collarbook.regulation.Cases.cylinder;
import static org.collarbook.regulation.Cases.stationary;
import static org.collarbook.regulation.FillingLimit.Limit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import java.util.Random;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FillingLimitTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    /** Without the question of the pressure, which leaves the rows of lighter liquids unread, and of the capacity. */
    static final RuleBook TABLE_ALONE = RuleBookLoader.of(Map.of("us/49cfr-173.304a.yaml",
            RuleBookLoader.shipped("regulations/").get("us/49cfr-173.304a.yaml")));

    private static FillingLimit of(FactsBuilder facts, String gravity) {
        return BOOK.fillingLimit(facts.build(), gravity == null ? null : new BigDecimal(gravity), TODAY);
    }

    private static Limit limit(FactsBuilder facts, String gravity) {
        assertThat(of(facts, gravity)).isInstanceOf(Limit.class);
        return (Limit) of(facts, gravity);
    }

    /** The table of 49 CFR 173.304a(d)(1) as copied in AFMAN 24-604 Figure A3.3: both ends of rows. */
    @ParameterizedTest
    @CsvSource({"0.271,26", "0.289,26", "0.290,27", "0.306,27", "0.371,31", "0.398,32", "0.495,40", "0.496,41",
            "0.503,41",
            "0.504,42", "0.508,42", "0.510,42", "0.511,43", "0.519,43", "0.552,47", "0.592,52", "0.634,57", "0.5035,41",
            "0.6349,57"})
    void readsTheTable(String gravity, String percent) {
        FillingLimit limit = TABLE_ALONE.fillingLimit(cylinder().build(), new BigDecimal(gravity), TODAY);
        assertThat(limit).isInstanceOfSatisfying(Limit.class,
                found -> assertThat(found.percent()).isEqualByComparingTo(percent));
    }

    /** 47.6 lb × 42 % = 19.992 lb and 23.8 × 0.42 = 9.996 (published arithmetic), rounded down. */
    @ParameterizedTest
    @CsvSource({"47.6 lb,19.99", "23.8 lb,9.99", "100 lb,42.00", "108 L,100.00"})
    void weighsTheNet(String capacity, String net) {
        Limit limit = limit(cylinder().waterCapacity(WaterCapacity.parse(capacity)), "0.504");
        assertThat(limit.maxNet()).isEqualByComparingTo(capacity.endsWith("L") ? metric("108") : new BigDecimal(net));
        assertThat(limit.citation().section()).isEqualTo("173.304a(d)(1)");
    }

    /** A litre of water at 60 °F by the gallon of 173.315(b) Note 1 and the exact 3.785411784 L of a US gallon. */
    private static BigDecimal metric(String litres) {
        return new BigDecimal(litres).multiply(new BigDecimal("8.32828")).multiply(new BigDecimal("0.42")).divide(
                new BigDecimal("3.785411784"), 2, RoundingMode.DOWN);
    }

    @Test
    void grossNeedsTheTare() {
        Limit limit = limit(cylinder(), "0.504");
        assertThat(limit.maxGross(new BigDecimal("17.0"))).isEqualByComparingTo("36.99");
        assertThat(limit.maxGross(null)).isNull();
    }

    /**
     * 29 CFR 1910.110(b)(19)(v): 100 gallons above ground, gravity 0.510, 4200 / 52.6 = 79.8 gallons at 40 °F; the same
     * weight is 82.4 gallons at 60 °F (42 / 0.510).
     */
    @Test
    void oshasWorkedExample() {
        BigDecimal gravity = new BigDecimal("0.510");
        Limit limit = limit(stationary().waterCapacity(WaterCapacity.gallons("100")), "0.510");
        assertThat(limit.percent()).isEqualByComparingTo("42");
        assertThat(limit.maxNet()).isEqualByComparingTo("349.78");
        assertThat(limit.gallonsAt60F(gravity).setScale(1, RoundingMode.HALF_UP)).isEqualByComparingTo("82.4");
        BigDecimal at40F = gravity.multiply(new BigDecimal("1.031")).multiply(WaterCapacity.POUNDS_PER_GALLON);
        assertThat(FillingLimit.gallonsOf(limit.maxNet(), at40F).setScale(1, RoundingMode.DOWN)).isEqualByComparingTo(
                "79.8");
    }

    /** 49 CFR 173.315(b): 42 % up to 1,200 gallons, 45 % over; 41 and 44 for the row below. */
    @ParameterizedTest
    @CsvSource({"1200 gal,0.504,42", "1200.1 gal,0.504,45", "1200 gal,0.500,41", "30000 gal,0.500,44"})
    void largeTanksTakeMore(String capacity, String gravity, String percent) {
        assertThat(limit(stationary().waterCapacity(WaterCapacity.parse(capacity)), gravity).percent())
                .isEqualByComparingTo(
                        percent);
    }

    @Test
    void whatIsMissingIsNamed() {
        assertThat(reasons(of(cylinder().waterCapacity(null), null))).containsExactlyInAnyOrder(
                ReasonCode.MISSING_SPECIFIC_GRAVITY, ReasonCode.MISSING_WATER_CAPACITY);
        assertThat(reasons(of(cylinder(), "0.640"))).containsExactly(ReasonCode.SPECIFIC_GRAVITY_OUT_OF_TABLE);
        assertThat(reasons(of(cylinder(), "0.270"))).containsExactly(ReasonCode.SPECIFIC_GRAVITY_OUT_OF_TABLE);
        assertThat(reasons(of(cylinder().service(Service.UNKNOWN), "0.504")))
                .containsExactly(ReasonCode.MISSING_LADING);
        assertThat(reasons(of(cylinder().service(new Service(new Lading("AIR"), null, null)), "0.504")))
                .containsExactly(
                        ReasonCode.NO_RULE_HELD);
        assertThat(reasons(of(cylinder().kind(null), "0.504"))).containsExactly(ReasonCode.MISSING_KIND);
    }

    private static java.util.List<ReasonCode> reasons(FillingLimit limit) {
        return limit instanceof FillingLimit.Unknown(var reasons)
                ? reasons.stream().map(Reason::code).toList()
                : java.util.List.of();
    }

    /** Common practice, no source: the 33.5 lb forklift cylinder holds what the trade calls 8 gallons. */
    @Test
    void theForkliftCylinderHoldsEightGallons() {
        BigDecimal gravity = new BigDecimal("0.504");
        Limit limit = limit(cylinder().waterCapacity(WaterCapacity.pounds("79.8")), "0.504");
        assertThat(limit.maxNet()).isEqualByComparingTo("33.51");
        assertThat(limit.gallonsAt60F(gravity).setScale(0, RoundingMode.HALF_UP)).isEqualByComparingTo("8");
    }

    @ParameterizedTest
    @CsvSource({"47.6 lb,47.6", "47.6LB,47.6", "1000 gal,8328.28", "1000 US gal,8328.28", "10 kg,22.0462"})
    void capacitiesAreInPounds(String text, String pounds) {
        assertThat(WaterCapacity.parse(text).toPounds().setScale(4, RoundingMode.HALF_UP))
                .isEqualByComparingTo(new BigDecimal(
                        pounds).setScale(4, RoundingMode.HALF_UP));
    }

    @ParameterizedTest
    @CsvSource({"-47.6 lb,0", "47.6,4", "47.6 stone,5", "0 lb,0", "lb,0", "'',0", "1e3 lb,1"})
    void capacitiesWithoutUnitOrSignAreRefused(String text, int index) {
        assertThat(WaterCapacity.tryParse(text)).isInstanceOfSatisfying(ParseResult.Rejected.class,
                rejected -> assertThat(
                        rejected.index()).isEqualTo(index));
    }

    @Test
    void whatIsPrintedIsReadBack() {
        long seed = 4711L;
        Random random = new Random(seed);
        for (int i = 0; i < 10_000; i++) {
            WaterCapacity capacity = new WaterCapacity(
                    BigDecimal.valueOf(1 + random.nextInt(10_000_000), random.nextInt(5)),
                    WaterCapacity.Unit.values()[random.nextInt(4)]);
            assertThat(WaterCapacity.parse(capacity.toString())).as("seed %d", seed).isEqualTo(capacity);
        }
    }
}
