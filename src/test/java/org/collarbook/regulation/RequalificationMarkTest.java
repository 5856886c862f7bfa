package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.Cases.TODAY;

import java.time.YearMonth;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The examples of 49 CFR 180.213(d), of the trade, and of a collar that a web page misread. */
class RequalificationMarkTest {

    private static final Specification CYLINDER = Specification.parse("DOT-4BA240");
    private static final YearMonth MADE = YearMonth.of(1995, 5);

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
        MarkReading reading = RequalificationMark.read(text, MADE, TODAY, CYLINDER);
        assertThat(reading).isInstanceOfSatisfying(MarkReading.Read.class, read -> {
            assertThat(read.requalification().month()).isEqualTo(month);
            assertThat(read.requalification().method()).isEqualTo(method);
            assertThat(read.requalification().rin()).isEqualTo(rin == null ? null : new Rin(rin));
        });
    }

    @Test
    void starAndPlusAreAttributes() {
        assertThat(RequalificationMark.read("4/A123/18 *", MADE, TODAY, Specification.parse("DOT-3AA2015")))
                .isInstanceOfSatisfying(MarkReading.Read.class, read -> {
                    assertThat(read.requalification().star()).isTrue();
                    assertThat(read.requalification().method()).isEqualTo(Method.VOLUMETRIC_EXPANSION);
                });
        assertThat(RequalificationMark.read("4-18+", MADE, TODAY, CYLINDER)).isInstanceOfSatisfying(
                MarkReading.Read.class,
                read -> assertThat(read.requalification().plus()).isTrue());
    }

    /** 49 CFR 180.213(f): S is a proof test, and on series 8 the shell alone. */
    @Test
    void anSNeedsTheSpecification() {
        assertThat(RequalificationMark.read("5-16S", MADE, TODAY, Specification.parse("DOT-8AL")))
                .isInstanceOfSatisfying(
                        MarkReading.Read.class,
                        read -> assertThat(read.requalification().method()).isEqualTo(Method.SHELL_ONLY));
        assertThat(RequalificationMark.read("5-16S", MADE, TODAY, null)).isInstanceOf(MarkReading.Ambiguous.class);
        assertThat(RequalificationMark.read("5-16FS", MADE, TODAY, Specification.parse("DOT-8")))
                .isInstanceOfSatisfying(
                        MarkReading.Read.class, read -> assertThat(read.requalification().method()).isEqualTo(
                                Method.SHELL_AND_FILLER));
    }

    @Test
    void twoPossibleCenturiesAreBothTold() {
        assertThat(RequalificationMark.read("5-16", YearMonth.of(1915, 1), TODAY, CYLINDER)).isInstanceOfSatisfying(
                MarkReading.Ambiguous.class,
                ambiguous -> assertThat(ambiguous.readings()).extracting(Requalification::month)
                        .containsExactly(YearMonth.of(1916, 5), YearMonth.of(2016, 5)));
    }

    /** Common practice, no source: where nothing else is known, two digits name a year from 1940 on. */
    @Test
    void withoutAManufactureMonthTwoDigitsAreOfTheLastHundredYears() {
        assertThat(RequalificationMark.read("5-16", null, TODAY, CYLINDER)).isInstanceOfSatisfying(
                MarkReading.Read.class,
                read -> assertThat(read.requalification().month()).isEqualTo(YearMonth.of(2016, 5)));
        assertThat(RequalificationMark.read("5-39", null, TODAY, CYLINDER)).isInstanceOf(MarkReading.Unreadable.class);
    }

    @ParameterizedTest
    @CsvSource({"13-16,0", "0-16,0", "5-27,2", "5-94,2", "12-26,3", "+,0", "'',0", "5,1", "5-16Q,4", "5/X1/16,2",
            "hello,0"})
    void refusesWithTheIndex(String text, int index) {
        assertThat(RequalificationMark.read(text, MADE, TODAY, CYLINDER)).isInstanceOfSatisfying(
                MarkReading.Unreadable.class,
                unreadable -> assertThat(unreadable.index()).as("%s", unreadable).isEqualTo(index));
    }

    /** Letter of no known meaning: the month is read, the method stays a missing fact. */
    @Test
    void anUnknownLetterIsNoMethod() {
        assertThat(RequalificationMark.read("5-16R", MADE, TODAY, CYLINDER)).isInstanceOfSatisfying(
                MarkReading.Read.class,
                read -> {
                    assertThat(read.requalification().method()).isNull();
                    assertThat(read.warnings()).hasSize(1);
                });
    }

    @Test
    void whatIsPrintedIsReadBack() {
        long seed = 20261125L;
        Random random = new Random(seed);
        for (int i = 0; i < 20_000; i++) {
            Method method = Method.values()[random.nextInt(Method.values().length)];
            boolean series8 = method == Method.SHELL_ONLY || method == Method.SHELL_AND_FILLER;
            Requalification mark = new Requalification(MADE.plusMonths(random.nextInt(370)), method,
                    random.nextBoolean(), random
                            .nextBoolean(),
                    random.nextBoolean() ? null : new Rin("C%03d".formatted(random.nextInt(1000))), false,
                    Requalification.Result.PASSED);
            MarkReading reading = RequalificationMark.read(RequalificationMark.print(mark), MADE, TODAY,
                    series8
                            ? Specification
                                    .parse("DOT-8")
                            : CYLINDER);
            assertThat(reading).as("seed %d: %s", seed, mark).isInstanceOfSatisfying(MarkReading.Read.class,
                    read -> assertThat(read.requalification()).isEqualTo(mark));
        }
    }

    /** Whatever the bytes, a reading comes back and nothing is thrown. */
    @Test
    void readsAnythingWithoutFailing() {
        long seed = 7L;
        Random random = new Random(seed);
        String letters = "0123456789-/ .ABCDEFSTUVXdotc*+★\t\u0000é";
        for (int i = 0; i < 200_000; i++) {
            StringBuilder text = new StringBuilder();
            for (int length = random.nextInt(14); length > 0; length--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            assertThat(RequalificationMark.read(text.toString(), random.nextBoolean() ? null : MADE, TODAY, CYLINDER))
                    .as(
                            "seed %d: %s", seed, text)
                    .isNotNull();
            if (Specification.tryParse(text.toString()) instanceof ParseResult.Parsed<Specification>(var read, var _)) {
                assertThat(Specification.parse(read.toString())).as("seed %d: %s", seed, text).isEqualTo(read);
            }
        }
    }
}
