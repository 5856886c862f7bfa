package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.Cases.TODAY;
import static org.collarbook.regulation.Readings.ambiguous;
import static org.collarbook.regulation.Readings.unreadable;
import static org.collarbook.regulation.Readings.value;
import static org.collarbook.regulation.Readings.warnings;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The examples of 49 CFR 180.213(d), of the trade, and of a collar that a web page misread. */
class RequalificationMarkTest {

    private static final Specification CYLINDER = Specification.parse("DOT-4BA240");
    private static final YearMonth MADE = YearMonth.of(1995, 5);

    private static final List<Method> ONE = List.of(Method.VOLUMETRIC_EXPANSION, Method.PROOF_PRESSURE,
            Method.EXTERNAL_VISUAL, Method.ULTRASONIC, Method.EDDY_CURRENT_VISUAL, Method.ACOUSTIC_EMISSION,
            Method.SHELL_ONLY, Method.SHELL_AND_FILLER, Method.V, Method.K);

    private static Reading<RequalificationMark> read(String text) {
        return read(text, MADE, CYLINDER);
    }

    private static Reading<RequalificationMark> read(String text, @Nullable YearMonth made,
            @Nullable Specification specification) {
        return RequalificationMark.read(text, Collar.of(specification, made, TODAY));
    }

    @ParameterizedTest
    @CsvSource({"5-16,2016-05,VOLUMETRIC_EXPANSION,", "5-16E,2016-05,EXTERNAL_VISUAL,",
            "05-16 S,2016-05,PROOF_PRESSURE,",
            "3-12E,2012-03,EXTERNAL_VISUAL,", "5/2016,2016-05,VOLUMETRIC_EXPANSION,",
            "9/A123/06,2006-09,VOLUMETRIC_EXPANSION,A123",
            "5/B045/16 E,2016-05,EXTERNAL_VISUAL,B045", "6/H204/22 VE,2022-06,EDDY_CURRENT_VISUAL,H204",
            "3/C777/12 E,2012-03,EXTERNAL_VISUAL,C777", "8/D210/21 S,2021-08,PROOF_PRESSURE,D210",
            "11/K031/14,2014-11,VOLUMETRIC_EXPANSION,K031", "12-02,2002-12,VOLUMETRIC_EXPANSION,",
            "1202,2002-12,VOLUMETRIC_EXPANSION,", "0595,1995-05,VOLUMETRIC_EXPANSION,",
            "05 95,1995-05,VOLUMETRIC_EXPANSION,",
            "3-99E,1999-03,EXTERNAL_VISUAL,", "5-95,1995-05,VOLUMETRIC_EXPANSION,", "5-2016 UE,2016-05,ULTRASONIC,"})
    void reads(String text, YearMonth month, Method method, String rin) {
        assertThat(value(read(text))).isEqualTo(new RequalificationMark(month, rin == null ? null : new Rin(rin), List
                .of(method), false, false));
    }

    @Test
    void starAndPlusAreAttributes() {
        assertThat(value(read("4/A123/18 *", MADE, Specification.parse("DOT-3AA2015"))))
                .isEqualTo(new RequalificationMark(YearMonth.of(2018, 4), new Rin("A123"), List.of(
                        Method.VOLUMETRIC_EXPANSION), true, false));
        assertThat(value(read("4-18+")).plus()).isTrue();
    }

    /** 49 CFR 180.213(f): S is a proof test, and on series 8 the shell alone. */
    @Test
    void anSIsAProofTestOrTheShellAloneAndTheSpecificationDecides() {
        assertThat(value(read("5-16S", MADE, Specification.parse("DOT-8AL"))).methods())
                .containsExactly(Method.SHELL_ONLY);
        assertThat(value(read("5-16S")).methods()).containsExactly(Method.PROOF_PRESSURE);
        assertThat(ambiguous(read("5-16S", MADE, null)).because()).contains("series 8");
        assertThat(value(read("5-16FS", MADE, Specification.parse("DOT-8"))).methods())
                .containsExactly(Method.SHELL_AND_FILLER);
    }

    /** PHMSA letter 13-0032 (2013-05-29): an S may stand for a siphon tube. */
    @Test
    void anSMayBeASiphonTubeAndTheReadingSaysSo() {
        assertThat(warnings(read("5-16S"))).anyMatch(warning -> warning.contains("siphon tube"));
    }

    /**
     * 49 CFR 180.213(d): the RIN in a square between month and year, clockwise from the upper left, so that A123 of
     * September 2006 shows A1 above 32.
     */
    @ParameterizedTest
    @CsvSource({"9 A1 32 06, 9/A123/2006", "9 a1 32 06, 9/A123/2006", "9 A1/32 06, 9/A123/2006",
            "9 A1 32 2006 E, 9/A123/2006 E", "5/B0/54/16 E, 5/B045/2016 E"})
    void theSquareReadsClockwiseSoItsLowerRowIsTurned(String text, String canonical) {
        assertThat(value(read(text))).hasToString(canonical);
    }

    /** 49 CFR 180.415: "10-99 P, V, L" is October 1999, pressure, external visual and lining; "2-00 K" leakage. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"10-99 P, V, L|10-1999 P, V, L|P V L", "10-99 PVL|10-1999 P, V, L|P V L",
            "10-99 P V L|10-1999 P, V, L|P V L", "10-99 P,V,L|10-1999 P, V, L|P V L", "2-00 K|2-2000 K|K",
            "2-00 I,P,T|2-2000 I, P, T|I P T", "10/99 p/v|10-1999 P, V|P V"})
    void oneMarkOfATankTellsOfSeveralTests(String text, String canonical, String methods) {
        RequalificationMark mark = value(read(text, YearMonth.of(1990, 1), Specification.parse("MC-331")));
        assertThat(mark).hasToString(canonical);
        assertThat(mark.requalifications()).extracting(one -> String.valueOf(one.method()))
                .containsExactly(methods.split(" "));
        assertThat(mark.requalifications()).allMatch(one -> one.month().equals(mark.month()));
        assertThat(warnings(read(text, YearMonth.of(1990, 1), Specification.parse("MC-331"))))
                .as("180.415 asks for no RIN").isEmpty();
    }

    /** 49 CFR 180.213: a RIN is needed on marks after 2004-05-31; a visual one of March 1999 is lawful without. */
    @ParameterizedTest
    @CsvSource({"3-99E, false", "5-04E, false", "6-04E, true", "5-16, true", "5/B045/16 E, false"})
    void aMarkAfterMayTwoThousandFourWithoutARinIsReadAndSaysSo(String text, boolean warned) {
        assertThat(warnings(read(text)).contains(RequalificationMark.RIN_NOT_RECORDED)).isEqualTo(warned);
    }

    @Test
    void aMarkWithARinHasTheMonthFirstWhateverTheContainer() {
        Specification un = Specification.parse("UN ISO 9809-1");
        assertThat(value(read("9/A123/06", MADE, un)).month()).isEqualTo(YearMonth.of(2006, 9));
        assertThat(value(read("12/11", MADE, un)).month()).isEqualTo(YearMonth.of(2012, 11));
        assertThat(read("12/11 UE", MADE, un)).as("a US suffix and no RIN").isInstanceOf(Reading.Ambiguous.class);
        assertThat(read("12/11", MADE, null)).isInstanceOf(Reading.Ambiguous.class);
        assertThat(value(read("12/11 E", MADE, null)).month()).isEqualTo(YearMonth.of(2011, 12));
    }

    @ParameterizedTest
    @ValueSource(strings = {"5 E 16", "E 5-16", "5-VE-16"})
    void aMethodBeforeTheYearIsNotTakenForAnInspector(String text) {
        assertThat(read(text)).isInstanceOf(Reading.Unreadable.class);
        assertThat(value(read("5 A 16")).month()).isEqualTo(YearMonth.of(2016, 5));
    }

    @Test
    void twoPossibleCenturiesAreBothTold() {
        assertThat(ambiguous(read("5-16", YearMonth.of(1915, 1), CYLINDER)).readings()).hasToString("[5-1916, 5-2016]");
    }

    /** Common practice, no source: where nothing else is known, two digits name a year from 1940 on. */
    @Test
    void withoutAManufactureMonthTwoDigitsAreOfTheLastHundredYears() {
        assertThat(value(read("5-16", null, CYLINDER)).month()).isEqualTo(YearMonth.of(2016, 5));
        assertThat(read("5-39", null, CYLINDER)).isInstanceOf(Reading.Unreadable.class);
    }

    /** ADR 6.2.3.9: the month need not be stamped where the interval is ten years or more. */
    @Test
    void anAdrMarkOfAYearAloneMayBeAnyOfItsMonths() {
        Specification adr = Specification.parse("EN 1442");
        assertThat(ambiguous(read("2014", MADE, adr)).readings()).hasSize(12);
        assertThat(ambiguous(read("2014", YearMonth.of(2014, 9), adr)).readings())
                .as("not before the original test").hasSize(4);
    }

    @Test
    void aMarkBeforeTheManufactureIsNamedAsSuch() {
        Reading.Unreadable<RequalificationMark> early = unreadable(read("5-94"));
        assertThat(early.fault()).isEqualTo(Reading.Fault.BEFORE_MANUFACTURE);
        assertThat(early.expected()).contains("1995-05");
        assertThat(unreadable(read("5-27")).fault()).isEqualTo(Reading.Fault.IN_THE_FUTURE);
    }

    @ParameterizedTest
    @CsvSource({"13-16,0", "0-16,0", "5-27,2", "5-94,2", "12-26,3", "+,0", "'',0", "5,1", "5-16Q,4", "5/X1/16,2",
            "hello,0"})
    void refusesWithTheIndex(String text, int index) {
        Reading.Unreadable<RequalificationMark> refused = unreadable(read(text));
        assertThat(refused.index()).as("%s", refused).isEqualTo(index);
        assertThat(refused.expected()).isNotBlank();
        assertThat(refused.raw()).isEqualTo(text);
    }

    /** Letter of no known meaning: the month is read, the method stays a missing fact. */
    @Test
    void anUnknownLetterIsNoMethod() {
        assertThat(value(read("5-16R")).requalifications()).singleElement().satisfies(one -> assertThat(one.method())
                .isNull());
        assertThat(warnings(read("5-16R"))).contains("the suffix names no method that is known");
    }

    @Test
    void whatIsPrintedIsReadBack() {
        long seed = 20261125L;
        Random random = new Random(seed);
        for (int i = 0; i < 20_000; i++) {
            RequalificationMark mark = random(random);
            boolean series8 = mark.methods().contains(Method.SHELL_ONLY);
            assertThat(value(read(mark.toString(), MADE, series8 ? Specification.parse("DOT-8") : CYLINDER)))
                    .as("seed %d: %s", seed, mark).isEqualTo(mark);
        }
    }

    private static RequalificationMark random(Random random) {
        List<Method> tests = new ArrayList<>(List.of(Method.V, Method.I, Method.K, Method.L, Method.T, Method.P));
        Collections.shuffle(tests, random);
        int several = random.nextInt(7);
        boolean tank = several > 1;
        List<Method> methods = tank
                ? tests.subList(0, several)
                : several == 1 ? List.of() : List.of(ONE.get(random.nextInt(ONE.size())));
        return new RequalificationMark(MADE.plusMonths(random.nextInt(370)), random.nextBoolean()
                ? null
                : new Rin("C%03d".formatted(random.nextInt(1000))), methods, !tank && random.nextBoolean(),
                !tank && random.nextBoolean());
    }
}
