package org.collarbook.registry.stamps;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.stream.Stream;

import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Readings;
import org.collarbook.regulation.Specification;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines as a person or a scanner reads them off: what each is taken for, and what they make together. */
class CollarReadingTests {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private static CollarReading read(String... lines) {
        return CollarReading.of(List.of(lines), Collar.unknown(TODAY));
    }

    private static String shown(StampLine line) {
        return line.kind() + " " + switch (line.reading()) {
            case Reading.Read<Stamp> read -> read.value().toString();
            case Reading.Ambiguous<Stamp> ambiguous -> "? " + ambiguous.readings();
            case Reading.Unreadable<Stamp> unreadable -> "at " + unreadable.index();
        };
    }

    private static List<String> shown(CollarReading reading) {
        return reading.lines().stream().map(CollarReadingTests::shown).toList();
    }

    private static StampLine only(CollarReading reading) {
        return reading.lines().getLast();
    }

    /** 49 CFR 178.35(f), the three-line form of its example; a serial number is no month there. */
    @ParameterizedTest
    @ValueSource(strings = {"1234", "1202", "0595"})
    void theOrderOfTheLinesTellsASerialOfFourDigitsFromAMonth(String serial) {
        var reading = read("DOT-3A1800", serial, "XY", "AB 5-95");
        assertThat(shown(reading)).containsExactly("SPECIFICATION DOT-3A1800", "SERIAL " + serial, "MAKER XY",
                "MANUFACTURED 1995-05");
        assertThat(reading.marks().serial()).hasToString(serial);
        assertThat(reading.marks().maker()).hasToString("XY");
        assertThat(reading.marks().manufactured()).isEqualTo(YearMonth.of(1995, 5));
    }

    /** 49 CFR 178.35(f): "DOT-3A1800-1234-XY" and "AB 5-95". */
    @ParameterizedTest
    @ValueSource(strings = {"DOT-3A1800-1234-XY AB 5-95", "DOT-3A1800 / 1234 / XY / AB 5-95",
            "dot–3a1800–1234–xy ab 5–95"})
    void readsAWholeCollarOnOneLine(String line) {
        assertThat(shown(read(line))).containsExactly("COLLAR DOT-3A1800 / 1234 / XY / AB 1995-05");
    }

    @Test
    void readsADualMarkAmongSlashes() {
        assertThat(shown(read("DOT-3AA2400 / TC-3AAM165 / 77A / XY"))).containsExactly(
                "COLLAR DOT-3AA2400/TC-3AAM165 / 77A / XY");
        assertThat(shown(read("TC-4BAM17 / DOT-4BA240"))).containsExactly("SPECIFICATION DOT-4BA240/TC-4BAM17");
    }

    /** Here 240 and 3000 may be the service pressure, so no serial number is made of them. */
    @ParameterizedTest
    @ValueSource(strings = {"DOT-4BA-240-XY", "DOT-SP12345-3000-XY", "DOT-3-1234-XY"})
    void aPressureIsNotTakenForASerial(String line) {
        assertThat(only(read(line)).reading()).isInstanceOf(Reading.Unreadable.class);
    }

    @Test
    void theDateAtTheEndOfACollarIsBlamedWhereItStands() {
        assertThat(shown(read("DOT-3A1800-1234-XY AB 13-95"))).containsExactly("COLLAR at 22");
    }

    static Stream<Arguments> lines() {
        return Stream.of(row("DOT-4BA240", "SPECIFICATION DOT-4BA240"), row("4BW240", "SPECIFICATION DOT-4BW240"),
                row("π EN 1442", "SPECIFICATION EN 1442"), row("UN ISO 9809-1", "SPECIFICATION UN ISO 9809-1"),
                row("5-16E", "REQUALIFICATION 5-2016 E"), row("9 A1 32 06", "REQUALIFICATION 9/A123/2006"),
                row("5/B045/16 E", "REQUALIFICATION 5/B045/2016 E"), row("10-99 P, V, L",
                        "REQUALIFICATION 10-1999 P, V, L"),
                row("5-95", "MANUFACTURED 1995-05"), row("1202", "MANUFACTURED 2002-12"),
                row("5 A 95", "MANUFACTURED 1995-05"), row("12/11", "MANUFACTURED ? [2011-12, 2012-11]"),
                row("W.C. 47.6 LB", "WATER_CAPACITY 47.6 lb"), row("108 L", "WATER_CAPACITY 108 L"),
                row("1000 USWG", "WATER_CAPACITY 1000 gal"), row("47.6 LB WC", "WATER_CAPACITY 47.6 lb"),
                row("WC 47.6", "WATER_CAPACITY ? [47.6 lb, 47.6 kg, 47.6 L, 47.6 gal]"),
                row("TW 17.0", "TARE 17 lb"), row("T.W. 17 LB", "TARE 17 lb"), row("TARE 7.7 KG",
                        "TARE 16.976 lb"),
                row("47.6 LB", "null ? [47.6 lb, 47.6 lb]"),
                // GS1 examples: (8003)0952114112345432a/b and (8004)95211415678, from a test that quotes GS1 TDS 2.3
                row("(8003)0952114112345432a/b", "TAG (8003)0952114112345432a/b"),
                row("(8004)95211415678", "TAG (8004)95211415678"), row("S/N 1202", "SERIAL 1202"),
                row("serial no. ab 12", "SERIAL AB 12"), row("A12345", "SERIAL A12345"));
    }

    private static Arguments row(String line, String shown) {
        return Arguments.of(line, shown);
    }

    @ParameterizedTest
    @MethodSource("lines")
    void takesALineForWhatItIs(String line, String expected) {
        assertThat(shown(read(line))).containsExactly(expected);
    }

    @ParameterizedTest
    @CsvSource({"DOT-4QQ240, SPECIFICATION at 4", "13-04, MANUFACTURED at 0", "13-04E, REQUALIFICATION at 0",
            "5/X1/16, REQUALIFICATION at 2", "12-26, MANUFACTURED at 3", "WC, WATER_CAPACITY at 2",
            "WC 0 lb, WATER_CAPACITY at 3", "TW -17, TARE at 0", "(8003)0952114112345532a, TAG at 19",
            "hello, null at 0", "'', null at 0", "4BA240X, SPECIFICATION at 6", "S/N, SERIAL at 3",
            "1304, MANUFACTURED at 0"})
    void anIllWrittenLineIsRefusedAsWhatItSetsOutToBe(String line, String expected) {
        assertThat(shown(read(line))).containsExactly(expected);
    }

    @Test
    void whatOneLineSaysServesTheLinesAfterIt() {
        assertThat(shown(read("UN ISO 9809-1", "12/11", "62.1KG", "50L"))).containsExactly(
                "SPECIFICATION UN ISO 9809-1", "MANUFACTURED 2012-11", "TARE 136.907 lb", "WATER_CAPACITY 50 L");
        assertThat(shown(read("DOT-4BA240", "12/11", "WC 47.6", "TW 17", "3-16", "12345", "XY"))).containsExactly(
                "SPECIFICATION DOT-4BA240", "MANUFACTURED 2011-12", "WATER_CAPACITY 47.6 lb", "TARE 17 lb",
                "REQUALIFICATION 3-2016", "SERIAL 12345", "MAKER XY");
        assertThat(shown(read("DOT-8AL", "1-90", "5-05 S"))).endsWith("REQUALIFICATION 5-2005 S");
        assertThat(shown(read("5-05 S"))).as("nothing decides").containsExactly(
                "REQUALIFICATION ? [5-2005 S, 5-2005 S]");
    }

    /**
     * Common practice, no source: pounds on a US cylinder, metric elsewhere; a tank may mean gallons. So it
     * is with a bare tare.
     */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"DOT-4BA240|WATER_CAPACITY 47.6 lb|TARE 17 lb",
            "ICC-4B240|WATER_CAPACITY 47.6 lb|TARE 17 lb",
            "TC-4BAM17|WATER_CAPACITY ? [47.6 kg, 47.6 L]|TARE ? [17 lb, 37.479 lb]",
            "UN|WATER_CAPACITY ? [47.6 kg, 47.6 L]|TARE ? [17 lb, 37.479 lb]",
            "EN 1442|WATER_CAPACITY ? [47.6 kg, 47.6 L]|TARE ? [17 lb, 37.479 lb]",
            "MC-331|WATER_CAPACITY ? [47.6 lb, 47.6 kg, 47.6 L, 47.6 gal]|TARE 17 lb"})
    void aNumberWithoutAUnitIsNotGuessedWhereNoCustomDecides(String mark, String capacity, String tare) {
        assertThat(shown(read(mark, "WC 47.6", "TW 17"))).containsExactly("SPECIFICATION " + mark, capacity, tare);
    }

    @Test
    void onlyTheFirstBareMonthIsTheOriginalTest() {
        var reading = read("DOT-4BA240", "5-04", "5-16", "5-21E");
        assertThat(reading.marks().manufactured()).isEqualTo(YearMonth.of(2004, 5));
        assertThat(reading.marks().requalifications()).map(Object::toString).containsExactly("5-2016", "5-2021 E");
        assertThat(shown(CollarReading.of(List.of("5-16", "5-04"), Collar.of(Specification.parse("DOT-4BA240"),
                YearMonth.of(2004, 5), TODAY)))).containsExactly("REQUALIFICATION 5-2016", "MANUFACTURED 2004-05");
    }

    @Test
    void aTestBeforeTheOriginalOneIsRefusedWithThatMonth() {
        assertThat(Readings.unreadable(only(read("DOT-4BA240", "5-04", "5-01 E")).reading())).satisfies(refused -> {
            assertThat(refused.fault()).isEqualTo(Reading.Fault.BEFORE_MANUFACTURE);
            assertThat(refused.expected()).contains("2004-05");
        });
    }

    @Test
    void whatTwoLinesSayOtherwiseIsNotKnown() {
        var reading = read("DOT-4BA240", "DOT-4E240", "S/N 1", "S/N 1");
        assertThat(reading.marks().specification()).isNull();
        assertThat(reading.marks().serial()).hasToString("1");
        assertThat(Readings.warnings(reading.lines().get(1).reading())).anyMatch(warning -> warning.contains(
                "another line says otherwise"));
    }

    @Test
    void nothingReadLeavesEverythingUnknown() {
        var marks = read("hello", "\u0000", "\ud800").marks();
        assertThat(marks).isEqualTo(new ReadMarks(null, null, null, null, null, null, null, null, null, null, List.of(),
                null, List.of()));
    }
}
