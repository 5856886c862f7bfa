package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Random;

import org.collarbook.regulation.Reading.Ambiguous;
import org.collarbook.regulation.Reading.Read;
import org.collarbook.regulation.Reading.Unreadable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StampedMonthTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private static final Specification DOT = Specification.parse("DOT-4BA240");

    private static Reading<YearMonth> read(String text) {
        return StampedMonth.read(text, Collar.of(DOT, TODAY));
    }

    private static Reading<YearMonth> read(String text, String specification) {
        return StampedMonth.read(text, Collar.of(Specification.parse(specification), TODAY));
    }

    private static Reading<YearMonth> without(String text) {
        return StampedMonth.read(text, Collar.unknown(TODAY));
    }

    private static void isRead(Reading<YearMonth> reading, String month) {
        assertThat(Readings.value(reading)).isEqualTo(YearMonth.parse(month));
    }

    private static void isAmbiguous(Reading<YearMonth> reading, String... months) {
        assertThat(Readings.ambiguous(reading).readings()).extracting(YearMonth::toString).containsExactly(months);
        assertThat(Readings.ambiguous(reading).because()).isNotBlank();
    }

    /** 49 CFR 178.35(f): month and year, its example "AB 5-95" with the inspector's mark before. */
    @ParameterizedTest
    @CsvSource({"5-95, 1995-05", "05-95, 1995-05", "05 95, 1995-05", "0595, 1995-05", "5 A 95, 1995-05",
            "AB 5-95, 1995-05", "5/95, 1995-05", "05/2004, 2004-05", "5/2004, 2004-05", "052004, 2004-05",
            "2004-05, 2004-05", "2004/5, 2004-05", " 5-04 , 2004-05",
            // a web explainer (felttheater.com) reads it as February 2012: wrong, month comes first
            "1202, 2002-12",
            // both sides of today's month
            "11-26, 2026-11", "2026-11, 2026-11",
            // both sides of the oldest year that two digits stand for (common practice, no source)
            "1-40, 1940-01", "12-1939, 1939-12", "1-1900, 1900-01",
            // US marks have the month first even where both could be a month
            "12/11, 2011-12"})
    void readsMonthBeforeYear(String text, String month) {
        assertThat(read(text)).isEqualTo(new Read<>(text, YearMonth.parse(month), List.of()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"12-26", "12-2026", "2027-01", "1-27", "1-9999"})
    void aFutureMonthIsNamedAsSuch(String text) {
        assertThat(read(text)).isInstanceOfSatisfying(Unreadable.class,
                unreadable -> assertThat(unreadable.fault()).isEqualTo(Reading.Fault.IN_THE_FUTURE));
    }

    @ParameterizedTest
    @CsvSource({"13-04, 0", "0-04, 0", "1304, 0", "2004-13, 5", "12-1899, 3", "5, 1", "'', 0", "May 04, 0",
            "5-1-2004, 0", "5-4, 0", "5-20045, 0", "5 ABCD 95, 2", "-5-95, 0"})
    void othersAreRefusedWithThePlace(String text, int index) {
        assertThat(read(text)).isInstanceOfSatisfying(Unreadable.class, unreadable -> {
            assertThat(unreadable.index()).isEqualTo(index);
            assertThat(unreadable.expected()).isNotBlank();
            assertThat(unreadable.fault()).isEqualTo(Reading.Fault.SHAPE);
        });
    }

    /**
     * UN Model Regulations 6.2.2.7.7(c): "year (two digits) / month (two digits) separated by a slash"; 49 CFR 178.35(f):
     * month first. ADR takes the UN order over.
     */
    @Test
    void twelveSlashElevenIsTwoMonthsAndTheSchemeDecides() {
        for (var yearFirst : List.of("UN ISO 9809-1", "UN", "EN 1442", "ADR-PI", "ADR-DRUM")) {
            isRead(read("12/11", yearFirst), "2012-11");
        }
        for (var monthFirst : List.of("DOT-4BA240", "ICC-4B240", "CRC-4B240", "BTC-3A1800", "CTC-4BA240", "TC-4BAM17",
                "DOT-SP12345")) {
            isRead(read("12/11", monthFirst), "2011-12");
        }
        isAmbiguous(without("12/11"), "2011-12", "2012-11");
        isAmbiguous(without("12-11"), "2011-12", "2012-11");
        isRead(without("05/05"), "2005-05");
        isRead(without("5/11"), "2011-05");
        isRead(without("11/98"), "1998-11");
        isRead(without("13/05"), "2013-05");
    }

    @Test
    void withoutASchemeADashNeverTurnsAMonthThirteenIntoAYear() {
        assertThat(without("13-04")).isInstanceOfSatisfying(Unreadable.class,
                unreadable -> assertThat(unreadable.expected()).contains("month from 1 to 12"));
    }

    /** "1202" is December 2002 also where no scheme is known: no scheme writes the year first without a slash. */
    @Test
    void twelveOhTwoIsDecemberNotFebruary() {
        isRead(read("1202"), "2002-12");
        isRead(without("1202"), "2002-12");
    }

    /** UN Model Regulations, 17th revision, page 676: "ISO 9809-1 F IB 2000/12", country, body, year and month. */
    @Test
    void readsUnDatesBehindCountryAndBody() {
        isRead(read("F IB 2000/12", "UN ISO 9809-1"), "2000-12");
        isRead(read("98/04", "UN"), "1998-04");
        isRead(read("D TUV 12/11", "EN 1442"), "2012-11");
    }

    @Test
    void aUnDateThatCannotHaveTheYearFirstIsReadWithADoubt() {
        isRead(read("05/98", "UN"), "1998-05");
        assertThat(Readings.warnings(read("05/98", "UN"))).hasSize(1);
    }

    /** ADR 6.2.3.9: the month need not be stamped where the interval is ten years or more. */
    @Test
    void aYearAloneIsAnyOfItsMonths() {
        isAmbiguous(read("2014", "EN 1442"), "2014-01", "2014-02", "2014-03", "2014-04", "2014-05", "2014-06",
                "2014-07", "2014-08", "2014-09", "2014-10", "2014-11", "2014-12");
        assertThat(Readings.ambiguous(read("2026", "EN 1442")).readings()).as("not ahead of today").hasSize(11);
        assertThat(without("2014")).isInstanceOf(Ambiguous.class);
        assertThat(read("2027", "EN 1442")).isInstanceOfSatisfying(Unreadable.class,
                unreadable -> assertThat(unreadable.fault()).isEqualTo(Reading.Fault.IN_THE_FUTURE));
        assertThat(read("2014")).as("month 20 under DOT").isInstanceOf(Unreadable.class);
    }

    @Test
    void twoCenturiesAreBothNamedOnceBothArePlausible() {
        isAmbiguous(StampedMonth.read("5-42", Collar.unknown(LocalDate.of(2045, 1, 1))), "1942-05", "2042-05");
    }

    @Test
    void theManufactureAndTheMarkBeforeNarrowTheCentury() {
        var asOf = LocalDate.of(2045, 1, 1);
        isRead(StampedMonth.read("5-42", Collar.of(DOT, YearMonth.of(1950, 1), asOf)), "2042-05");
        isRead(StampedMonth.read("5-42", new Collar(DOT, YearMonth.of(1941, 1), YearMonth.of(1960, 1), asOf)),
                "2042-05");
        isAmbiguous(StampedMonth.read("5-42", new Collar(DOT, YearMonth.of(1941, 1), YearMonth.of(1941, 9), asOf)),
                "1942-05", "2042-05");
    }

    @Test
    void aMarkBeforeTheOneBeforeItIsReadWithADoubt() {
        assertThat(Readings.warnings(StampedMonth.read("5-10", new Collar(DOT, YearMonth.of(1998, 1),
                YearMonth.of(2015, 1), TODAY)))).hasSize(1);
    }

    @Test
    void aRinIsNoPartOfTheOriginalTest() {
        assertThat(read("9/A123/06")).isInstanceOfSatisfying(Unreadable.class,
                unreadable -> assertThat(unreadable.index()).isEqualTo(2));
    }

    @Test
    void printedMonthsAreReadBackTheSame() {
        long seed = 20261125;
        var random = new Random(seed);
        var schemes = new Specification[]{null, DOT, Specification.parse("UN"), Specification.parse("EN 1442")};
        for (int i = 0; i < 2_000; i++) {
            var month = YearMonth.of(1900, 1).plusMonths(random.nextInt(126 * 12 + 11));
            var printed = StampedMonth.print(month);
            assertThat(StampedMonth.read(printed, Collar.of(schemes[i % schemes.length], TODAY))).as("seed %d", seed)
                    .isEqualTo(new Read<>(printed, month, List.of()));
        }
    }
}
