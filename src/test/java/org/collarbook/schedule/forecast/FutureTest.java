package org.collarbook.schedule.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

import org.collarbook.regulation.Condition;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Rin;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StandingHold;
import org.collarbook.regulation.WaterCapacity;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Worked by hand, on 25 November 2026 for twenty years (through October 2046), from 49 CFR 180.209: (e), coated and
 * exclusively in non-corrosive service: twelve years at first and after an expansion test, ten after a proof test (as
 * quoted in 2026); (g), five years after an external visual; Table 1, five years otherwise (both read in the text of
 * 2019-10-01). Each interval counts from the month in which it was done.
 */
class FutureTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    private static final RuleBook BOOK = RuleBookLoader.standard();

    private static FactsBuilder cylinder(String specification, String made, String... marks) {
        var history = new ArrayList<Requalification>();
        for (var mark : marks) {
            var part = mark.split(" ", 2);
            history.add(Requalification.passed(YearMonth.parse(part[0]), Method.valueOf(part[1]), new Rin("A123")));
        }
        return Facts.builder().jurisdiction(Jurisdiction.US).kind(ContainerKind.CYLINDER)
                .specification(Specification.parse(specification)).manufactured(YearMonth.parse(made))
                .waterCapacity(WaterCapacity.pounds("47.6")).coated(true).marksLegible(true).ownerConsent(true)
                .service(Service.LPG).condition(Condition.SOUND).holds(List.of()).requalifications(history);
    }

    private static Recording played(FactsBuilder facts, Choice choice) {
        return Recording.of(BOOK, facts.build(), TODAY, 20, choice);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            AS_LAST              | 2028-05 2040-05
            VOLUMETRIC_EXPANSION | 2028-05 2040-05
            EXTERNAL_VISUAL      | 2028-05 2033-05 2038-05 2043-05
            PROOF_PRESSURE       | 2028-05 2038-05
            """)
    void afterAnExpansionTestOf2016(Choice choice, String months) {
        // (e): 2016-05 + 12; then + 12 (e), + 5 (g) or + 10 (e) each time
        assertMonths(played(cylinder("DOT-4BA240", "2004-05", "2016-05 VOLUMETRIC_EXPANSION"), choice), months);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            AS_LAST              | 2029-05 2034-05 2039-05 2044-05
            EXTERNAL_VISUAL      | 2029-05 2034-05 2039-05 2044-05
            VOLUMETRIC_EXPANSION | 2029-05 2041-05
            PROOF_PRESSURE       | 2029-05 2039-05
            """)
    void afterAnExternalVisualOf2024(Choice choice, String months) {
        // (g): 2024-05 + 5
        assertMonths(played(cylinder("DOT-4BA240", "2004-05", "2016-05 VOLUMETRIC_EXPANSION",
                "2024-05 EXTERNAL_VISUAL"), choice), months);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            AS_LAST              | 2030-03 2042-03                 | 1
            VOLUMETRIC_EXPANSION | 2030-03 2042-03                 | 0
            EXTERNAL_VISUAL      | 2030-03 2035-03 2040-03 2045-03 | 0
            PROOF_PRESSURE       | 2030-03 2040-03                 | 0
            """)
    void neverRequalified(Choice choice, String months, int neverDone) {
        // (e): 2018-03 + 12
        var recording = played(cylinder("DOT-4BA240", "2018-03"), choice);
        assertMonths(recording, months);
        assertThat(recording.neverDone).isEqualTo(neverDone);
    }

    private static void assertMonths(Recording recording, String months) {
        assertThat(recording.shell().stream().map(one -> one.substring(0, 7))).containsExactly(months.split(" "));
        assertThat(recording.notAccepted).isZero();
        assertThat(recording.silent).noneMatch(one -> one.startsWith("SHELL"));
    }

    /** (g) asks for exclusive service, so the test of Table 1 takes its place: five years each, from now. */
    @Test
    void theMethodThatTheRuleDoesNotTakeIsNotTaken() {
        var shared = cylinder("DOT-4BA240", "2004-05", "2020-05 VOLUMETRIC_EXPANSION")
                .service(new Service(Service.LPG.lading(), false, true));
        var recording = played(shared, Choice.EXTERNAL_VISUAL);
        assertThat(recording.shell()).containsExactly("2026-11 VOLUMETRIC_EXPANSION late",
                "2031-11 VOLUMETRIC_EXPANSION", "2036-11 VOLUMETRIC_EXPANSION", "2041-11 VOLUMETRIC_EXPANSION");
        assertThat(recording.notAccepted).as("told once").isEqualTo(1);
        // 3AL is not in the list of (g) either
        assertThat(played(cylinder("DOT-3AL1800", "2024-02"), Choice.EXTERNAL_VISUAL).shell())
                .containsExactly("2029-02 VOLUMETRIC_EXPANSION", "2034-02 VOLUMETRIC_EXPANSION",
                        "2039-02 VOLUMETRIC_EXPANSION", "2044-02 VOLUMETRIC_EXPANSION");
    }

    /** Without the coating (e) gives nothing: five years by Table 1 and by (g), and no proof test. */
    @Test
    void withoutTheCoatingItIsFiveYears() {
        var bare = cylinder("DOT-4BA240", "2023-08").coated(false);
        var months = List.of("2028-08", "2033-08", "2038-08", "2043-08");
        assertThat(played(bare, Choice.EXTERNAL_VISUAL).shell())
                .isEqualTo(months.stream().map(month -> month + " EXTERNAL_VISUAL").toList());
        var proof = played(bare, Choice.PROOF_PRESSURE);
        assertThat(proof.shell()).isEqualTo(months.stream().map(month -> month + " VOLUMETRIC_EXPANSION").toList());
        assertThat(proof.notAccepted).isEqualTo(1);
    }

    /** The due month counts to its last day; what is past it falls into this month, and counts on from there. */
    @Test
    void whatIsOverdueFallsIntoThisMonth() {
        assertThat(played(cylinder("DOT-4BA240", "2014-11"), Choice.EXTERNAL_VISUAL).shell())
                .startsWith("2026-11 EXTERNAL_VISUAL", "2031-11 EXTERNAL_VISUAL");
        assertThat(played(cylinder("DOT-4BA240", "2014-10"), Choice.EXTERNAL_VISUAL).shell())
                .startsWith("2026-11 EXTERNAL_VISUAL late", "2031-11 EXTERNAL_VISUAL");
    }

    /** 49 CFR 180.209(k): three years, and twenty-four from the original test; the last due month is its last of life. */
    @Test
    void aServiceLifeThatEndsEndsTheForecast() {
        var recording = played(cylinder("DOT-3HT1850", "2010-01", "2025-01 VOLUMETRIC_EXPANSION"), Choice.AS_LAST);
        assertThat(recording.shell()).containsExactly("2028-01 VOLUMETRIC_EXPANSION", "2031-01 VOLUMETRIC_EXPANSION",
                "2034-01 VOLUMETRIC_EXPANSION");
        assertThat(recording.leaves).containsExactly("2034-02");
    }

    @Test
    void aPermitThatEndsIsFollowedByNothingThatIsKnown() {
        var permitted = cylinder("DOT-SP12345", "2020-03").permit(new Permit("SP12345", LocalDate.of(2033, 6, 15), 5));
        var recording = played(permitted, Choice.AS_LAST);
        // 2020-03 + 5 is past; five years by the permit each time, and its own end comes before 2036-11
        assertThat(recording.shell()).containsExactly("2026-11 VOLUMETRIC_EXPANSION late",
                "2031-11 VOLUMETRIC_EXPANSION");
        assertThat(recording.silent).containsExactly("SHELL OTHER_AUTHORITY later");
    }

    @Test
    void whatGivesNoMonthSaysWhy() {
        // 180.209 Table 1: 4L needs no test
        var never = played(cylinder("DOT-4L240", "2012-03"), Choice.AS_LAST);
        assertThat(never.done).isEmpty();
        assertThat(never.silent).containsExactly("SHELL NOT_REQUIRED");
        assertThat(played(cylinder("DOT-4BA240", "2014-11").coated(null), Choice.AS_LAST).silent)
                .containsExactly("SHELL UNDETERMINED");
        assertThat(played(cylinder("DOT-4BA240", "2014-11").requalifications(null), Choice.AS_LAST).silent)
                .containsExactly("SHELL UNDETERMINED");
        var held = played(cylinder("DOT-4BA240", "2014-11")
                .holds(List.of(new StandingHold("DENTED", LocalDate.of(2026, 3, 1)))), Choice.AS_LAST);
        assertThat(held.silent).containsExactly("null HELD");
        assertThat(held.done).isEmpty();
    }

    /** 49 CFR 180.407(c): V and K each year, I and P each fifth; each is met by itself, whatever is chosen for cylinders. */
    @Test
    void tanksMoveByTheirOwnTests() {
        var tank = cylinder("MC-331", "2021-06", "2026-06 V", "2026-06 K", "2026-06 I", "2026-06 P")
                .kind(ContainerKind.CARGO_TANK).waterCapacity(WaterCapacity.gallons("10000"));
        var recording = played(tank, Choice.VOLUMETRIC_EXPANSION);
        assertThat(recording.done).filteredOn(one -> one.endsWith(" V") || one.endsWith(" K")).hasSize(40)
                .contains("2027-06 EXTERNAL_VISUAL V", "2027-06 LEAKAGE K", "2046-06 EXTERNAL_VISUAL V");
        assertThat(recording.done).filteredOn(one -> one.endsWith(" P"))
                .containsExactly("2031-06 PRESSURE P", "2036-06 PRESSURE P", "2041-06 PRESSURE P",
                        "2046-06 PRESSURE P");
        assertThat(recording.notAccepted).isZero();
    }

    /**
     * An invented change: ten years in place of the twelve of (e) from 2029 on. What is due in 2030 by twelve is overdue
     * by ten on the day of the change, so it is done in that month, and ten years later.
     */
    @Test
    void aValueThatBeginsAheadIsFollowed() {
        var file = "us/49cfr-180.209.yaml";
        var files = RuleBookLoader.shipped("regulations/");
        var value = "      - from: 2020-11-30\n        periods: {first: P12Y,";
        assertThat(files.get(file).split(Pattern.quote(value), -1)).as("once").hasSize(2);
        files.put(file, files.get(file).replace(value, """
                      - from: 2029-01-01
                        periods: {first: P10Y, VOLUMETRIC_EXPANSION: P10Y}
                        citation: {source: hm219b, section: 180.209(e), inForceFrom: 2029-01-01, basis: TEXT}
                      - from: 2020-11-30
                        until: 2029-01-01
                        periods: {first: P12Y,""".indent(6).stripTrailing()));
        var recording = Recording.of(RuleBookLoader.of(files), cylinder("DOT-4BA240", "2018-03").build(), TODAY, 20,
                Choice.VOLUMETRIC_EXPANSION);
        assertThat(recording.shell()).containsExactly("2029-01 VOLUMETRIC_EXPANSION", "2039-01 VOLUMETRIC_EXPANSION");
    }
}
