package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.Cases.TODAY;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.collarbook.regulation.Considered.Answer;
import org.collarbook.regulation.SiteAssessment.Outcome;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The extinguisher beside a bulk tank: 172 gallons and 40-B:C are common practice, no source; what keeps an extinguisher
 * up is 29 CFR 1910.157(e) and (f).
 */
class SiteRequirementTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final Set<String> ON = Set.of("COMMON_PRACTICE");
    private static final SiteExtinguisher GOOD = dryChemical(40, "2026-10 EXTINGUISHER_MAINTAINED");

    private static Facts tank(@Nullable String gallons) {
        return Cases.stationary().waterCapacity(gallons == null ? null : WaterCapacity.gallons(gallons)).build();
    }

    /** Stored pressure dry chemical of May 2022. */
    private static SiteExtinguisher dryChemical(@Nullable Integer rating, String... records) {
        return new SiteExtinguisher(Extinguisher.DRY_CHEMICAL_STORED_PRESSURE, YearMonth.of(2022, 5), rating, Arrays
                .stream(records)
                .map(text -> Requalification.passed(YearMonth.parse(text.split(" ")[0]), Method.valueOf(text.split(
                        " ")[1])))
                .toList());
    }

    private static SiteAssessment site(List<Facts> tanks, Set<String> enable, SiteExtinguisher... beside) {
        return BOOK.assessSite(new SiteFacts(Jurisdiction.US, tanks, List.of(beside), enable), TODAY);
    }

    @ParameterizedTest
    @CsvSource({"50,RECOMMENDED", "100,RECOMMENDED", "172,RECOMMENDED", "172.01,NOT_MET", "250,NOT_MET", "500,NOT_MET"})
    void theSizeOfTheTankDecides(String gallons, Outcome without) {
        SiteAssessment bare = site(List.of(tank(gallons)), ON);
        assertThat(bare.outcome()).isEqualTo(without);
        assertThat(bare.atLeast()).isEqualTo(40);
        assertThat(bare.gives(ReasonCode.NO_EXTINGUISHER)).isTrue();
        assertThat(bare.reasons()).allSatisfy(reason -> assertThat(reason.citation()).isNotNull());
        assertThat(bare.citation()).isNotNull().extracting(Citation::basis).isEqualTo(Basis.COMMON_PRACTICE);
        SiteAssessment with = site(List.of(tank(gallons)), ON, GOOD);
        assertThat(with.outcome()).isEqualTo(without == Outcome.NOT_MET ? Outcome.MET : Outcome.RECOMMENDED);
        assertThat(with.gives(ReasonCode.NO_EXTINGUISHER)).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"39,NOT_MET", "40,MET", "41,MET", ",UNDETERMINED"})
    void theRatingDecides(@Nullable Integer rating, Outcome outcome) {
        SiteAssessment assessment = site(List.of(tank("500")), ON,
                dryChemical(rating, "2026-10 EXTINGUISHER_MAINTAINED"));
        assertThat(assessment.outcome()).isEqualTo(outcome);
        assertThat(assessment.gives(ReasonCode.NO_EXTINGUISHER_SUFFICES)).isEqualTo(outcome != Outcome.MET);
    }

    /** 29 CFR 1910.157(e)(3), (e)(4) and Table L-1; on 2026-11-25 what was due in October is overdue. */
    @Test
    void whatIsNotKeptUpDoesNotCount() {
        List<Facts> tank = List.of(tank("500"));
        SiteExtinguisher unmaintained = dryChemical(40, "2025-10 EXTINGUISHER_MAINTAINED");
        SiteExtinguisher full = new SiteExtinguisher(GOOD.type(), YearMonth.of(2020, 10), 40, GOOD.records());
        SiteExtinguisher untested = new SiteExtinguisher(Extinguisher.CARBON_DIOXIDE, YearMonth.of(2021, 10), 40,
                GOOD.records());
        SiteExtinguisher soldered = new SiteExtinguisher(Extinguisher.SOLDERED_OR_RIVETED_SHELL, null, 40,
                GOOD.records());
        for (SiteExtinguisher one : List.of(unmaintained, full, untested, soldered)) {
            SiteAssessment assessment = site(tank, ON, one);
            assertThat(assessment.outcome()).as("%s", assessment).isEqualTo(Outcome.NOT_MET);
            assertThat(assessment.extinguishers().getFirst().keptUp()).isEqualTo(Answer.NO);
            assertThat(assessment.extinguishers().getFirst().reasons()).extracting(Reason::code)
                    .containsAnyOf(ReasonCode.EXTINGUISHER_OVERDUE, ReasonCode.EXTINGUISHER_OUT_OF_SERVICE);
            assertThat(site(tank, ON, one, GOOD).outcome()).as("another one is kept up").isEqualTo(Outcome.MET);
        }
        SiteExtinguisher dueThisMonth = dryChemical(40, "2025-11 EXTINGUISHER_MAINTAINED");
        assertThat(site(tank, ON, dueThisMonth).outcome()).isEqualTo(Outcome.MET);
    }

    @Test
    void aMissedLookIsToldAndDoesNotDecide() {
        SiteAssessment assessment = site(List.of(tank("500")), ON,
                dryChemical(40, "2026-03 EXTINGUISHER_MAINTAINED"));
        assertThat(assessment.outcome()).isEqualTo(Outcome.MET);
        assertThat(assessment.extinguishers().getFirst().status()).isEqualTo(Status.OVERDUE);
        assertThat(assessment.extinguishers().getFirst().reasons()).singleElement().satisfies(reason -> {
            assertThat(reason.code()).isEqualTo(ReasonCode.EXTINGUISHER_OVERDUE);
            assertThat(reason.citation()).isNotNull().extracting(Citation::section).isEqualTo("1910.157(e)(2)");
        });
    }

    @Test
    void whatIsNotKnownNeverMeets() {
        List<Facts> tank = List.of(tank("500"));
        for (SiteExtinguisher less : List.of(new SiteExtinguisher(null, GOOD.manufactured(), 40, GOOD.records()),
                new SiteExtinguisher(GOOD.type(), GOOD.manufactured(), 40, null),
                new SiteExtinguisher(GOOD.type(), GOOD.manufactured(), 40, List.of()),
                new SiteExtinguisher(GOOD.type(), null, 40, GOOD.records()))) {
            SiteAssessment assessment = site(tank, ON, less);
            assertThat(assessment.outcome()).as("%s", assessment).isEqualTo(Outcome.UNDETERMINED);
            assertThat(assessment.extinguishers().getFirst().suffices()).isEqualTo(Answer.UNKNOWN);
        }
        SiteAssessment unmeasured = site(List.of(tank(null)), ON, GOOD);
        assertThat(unmeasured.outcome()).isEqualTo(Outcome.UNDETERMINED);
        assertThat(unmeasured.gives(ReasonCode.MISSING_WATER_CAPACITY)).isTrue();
        assertThat(site(List.of(tank("500"), tank(null)), ON, GOOD).outcome()).isEqualTo(Outcome.UNDETERMINED);
        assertThat(site(List.of(tank("500"), tank(null)), ON).outcome()).isEqualTo(Outcome.NOT_MET);
        Facts something = tank("500").toBuilder().kind(null).build();
        assertThat(site(List.of(something), ON, GOOD).outcome()).isEqualTo(Outcome.UNDETERMINED);
    }

    @Test
    void switchedOffItSaysSo() {
        for (String gallons : new String[]{"100", "500", null}) {
            SiteAssessment off = site(List.of(tank(gallons)), Set.of(), GOOD);
            assertThat(off.outcome()).isEqualTo(Outcome.RULE_OFF);
            assertThat(off.reasons()).extracting(Reason::code).containsOnly(ReasonCode.RULE_OFF);
            assertThat(off.extinguishers().getFirst().requirements()).as("its own clocks run").isNotEmpty();
            assertThat(off.extinguishers().getFirst().suffices()).isNull();
        }
        List<Facts> both = List.of(tank("500"), tank("100"));
        assertThat(site(both, Set.of("us.site.extinguisher.required"), GOOD).outcome()).isEqualTo(Outcome.MET);
        assertThat(site(both, Set.of("us.site.extinguisher.recommended"), GOOD).outcome())
                .isEqualTo(Outcome.RULE_OFF);
    }

    @Test
    void theLargestTankAsksForTheSite() {
        assertThat(site(List.of(tank("100"), tank("500"), tank("50")), ON).outcome()).isEqualTo(Outcome.NOT_MET);
    }

    @Test
    void noTankAsksForNothing() {
        Facts cylinder = Cases.cylinder().build();
        for (List<Facts> tanks : List.of(List.<Facts>of(), List.of(cylinder))) {
            SiteAssessment none = site(tanks, ON, GOOD);
            assertThat(none.outcome()).isEqualTo(Outcome.NOT_REQUIRED);
            assertThat(none.gives(ReasonCode.NO_TANK_AT_SITE)).isTrue();
        }
    }

    @Test
    void whereNoRuleIsHeldNothingIsSaidToBeFine() {
        for (Jurisdiction where : new Jurisdiction[]{null, new Jurisdiction("CA-BC")}) {
            SiteAssessment elsewhere = BOOK.assessSite(new SiteFacts(where, List.of(tank("500")), List.of(GOOD), ON),
                    TODAY);
            assertThat(elsewhere.outcome()).isEqualTo(Outcome.UNDETERMINED);
            assertThat(elsewhere.reasons()).isNotEmpty();
            assertThat(elsewhere.extinguishers().getFirst().keptUp()).isEqualTo(Answer.UNKNOWN);
        }
        assertThat(site(List.of(tank("500")), ON).outcome()).isEqualTo(BOOK.assessSite(new SiteFacts(new Jurisdiction(
                "US-TX"), List.of(tank("500")), List.of(), ON), TODAY).outcome());
    }

    /** What is dated after the day asked about is left out, and told. */
    @Test
    void aRecordToComeDoesNotCount() {
        SiteAssessment before = BOOK.assessSite(new SiteFacts(Jurisdiction.US, List.of(tank("500")), List.of(GOOD), ON),
                TODAY.withMonth(9));
        assertThat(before.outcome()).isEqualTo(Outcome.UNDETERMINED);
        assertThat(before.extinguishers().getFirst().reasons()).extracting(Reason::code)
                .contains(ReasonCode.FACT_AFTER_AS_OF, ReasonCode.MISSING_RECORD);
    }

    @Test
    void makingAFactUnknownNeverMeetsMore() {
        Random random = new Random(20261125L);
        for (int i = 0; i < 5_000; i++) {
            List<SiteExtinguisher> beside = new ArrayList<>();
            for (int n = random.nextInt(3); n >= 0; n--) {
                beside.add(new SiteExtinguisher(Extinguisher.values()[random.nextInt(15)],
                        YearMonth.of(2012, 1).plusMonths(random.nextInt(170)), 10 * random.nextInt(1, 9),
                        List.of(Requalification.passed(YearMonth.of(2025, 6).plusMonths(random.nextInt(17)),
                                Method.EXTINGUISHER_MAINTAINED))));
            }
            List<Facts> tanks = List.of(tank(random.nextBoolean() ? "500" : "100"));
            Outcome known = outcome(tanks, beside);
            for (int n = 0; n < beside.size(); n++) {
                SiteExtinguisher one = beside.get(n);
                for (SiteExtinguisher less : List.of(
                        new SiteExtinguisher(null, one.manufactured(), one.ratingBC(), one.records()),
                        new SiteExtinguisher(one.type(), null, one.ratingBC(), one.records()),
                        new SiteExtinguisher(one.type(), one.manufactured(), null, one.records()),
                        new SiteExtinguisher(one.type(), one.manufactured(), one.ratingBC(), null))) {
                    List<SiteExtinguisher> blurred = new ArrayList<>(beside);
                    blurred.set(n, less);
                    assertThat(known != Outcome.MET && outcome(tanks, blurred) == Outcome.MET)
                            .as("case %d: %s", i, blurred).isFalse();
                }
            }
        }
    }

    private static Outcome outcome(List<Facts> tanks, List<SiteExtinguisher> beside) {
        return BOOK.assessSite(new SiteFacts(Jurisdiction.US, tanks, beside, ON), TODAY).outcome();
    }
}
