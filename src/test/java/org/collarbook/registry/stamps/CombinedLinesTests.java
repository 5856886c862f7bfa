package org.collarbook.registry.stamps;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.stream.Stream;

import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Readings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Lines with several marks, marks said twice, and pieces that are no serial number. */
class CombinedLinesTests {

    private static CollarReading read(String... lines) {
        return CollarReading.of(List.of(lines), Collar.unknown(LocalDate.of(2026, 11, 25)));
    }

    private static String last(CollarReading reading) {
        var line = reading.lines().getLast();
        return line.kind() + " " + switch (line.reading()) {
            case Reading.Read<Stamp> read -> read.value();
            case Reading.Ambiguous<Stamp> ambiguous -> "? " + ambiguous.readings();
            case Reading.Unreadable<Stamp> unreadable -> "at " + unreadable.index();
        };
    }

    private static List<String> warnings(CollarReading reading) {
        return Readings.warnings(reading.lines().getLast().reading());
    }

    private static String expected(CollarReading reading) {
        return Readings.unreadable(reading.lines().getLast().reading()).expected();
    }

    /** The parts in the order of 49 CFR 178.35(f); that they share a line is common practice, no source. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"DOT-4BA240 4-15|COLLAR DOT-4BA240 / 2015-04",
            "ICC-4BA240 4-52|COLLAR ICC-4BA240 / 1952-04", "DOT-4BA240 AB 4-15|COLLAR DOT-4BA240 / AB 2015-04",
            "4BA240 4-15|COLLAR DOT-4BA240 / 2015-04", "DOT-4BA240 5/B045/16 E|COLLAR DOT-4BA240 / 5/B045/2016 E",
            "DOT-4BA240 13-04|COLLAR at 11", "DOT-4BA240 WC 47.6|SPECIFICATION at 11",
            "DOT-3 1800|SPECIFICATION DOT-3-1800",
            "DOT-4BA240 TC-4BAM17|SPECIFICATION DOT-4BA240/TC-4BAM17",
            "TC-4BAM17 DOT-4BA240 8-15|COLLAR DOT-4BA240/TC-4BAM17 / 2015-08",
            "DOT-4BA240 / 9917 / XY / AB 5-15 / 12-20E|COLLAR DOT-4BA240 / 9917 / XY / AB 2015-05 / 12-2020 E",
            "DOT-4BA240 / 9917 / XY / AB 5-15 / 12-10E|COLLAR at 38",
            "DOT-4BA240 / 9917 / XY / AB 5-15 / later|COLLAR at 35"})
    void marksOnOneLine(String line, String expected) {
        assertThat(last(read(line))).isEqualTo(expected);
    }

    @Test
    void eachPartOfALineIsAMark() {
        var marks = read("DOT-4BA240 / 9917 / XY / AB 5-15 / 12-20E").marks();
        assertThat(marks.specification()).hasToString("DOT-4BA240");
        assertThat(marks.serial()).hasToString("9917");
        assertThat(marks.manufactured()).isEqualTo(YearMonth.of(2015, 5));
        assertThat(marks.requalifications()).singleElement().hasToString("12-2020 E");
    }

    /** UN Model Regulations, example of the marks of a cylinder behind 6.2.2.7 (17th revision, page 676). */
    @Test
    void theExampleOfAUnitedNationsCollar() {
        var reading = read("25E D MF 765432 H", "PW200 PH300BAR 62.1KG 50L 5.8MM", "ISO 9809-1 F IB 2000/12");
        assertThat(reading.lines()).extracting(StampLine::kind).containsExactly(StampKind.COLLAR, StampKind.COLLAR,
                StampKind.MANUFACTURED);
        var marks = reading.marks();
        assertThat(marks.maker()).hasToString("MF");
        assertThat(marks.serial()).hasToString("765432");
        assertThat(marks.tareInKilograms()).isEqualByComparingTo("62.1");
        assertThat(marks.waterCapacity()).hasToString("50 L");
        assertThat(marks.workingPressure()).isEqualTo("200 bar");
        assertThat(marks.testPressure()).isEqualTo("300 bar");
        assertThat(marks.manufactured()).isEqualTo(YearMonth.of(2000, 12));
        assertThat(marks.specification()).as("no UN symbol is told").isNull();
        assertThat(warnings(reading)).anyMatch(warning -> warning.contains("ISO 9809-1 is a design standard"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"UN|ISO 9809-1 F IB 2000/12|COLLAR UN ISO 9809-1 / F IB 2000-12",
            "UN|ISO 9809-1|SPECIFICATION UN ISO 9809-1",
            "S/N 1|UN ISO 9809-1 F IB 2000/12|COLLAR UN ISO 9809-1 / F IB 2000-12",
            "DOT-4BA240|ISO 9809-1|SPECIFICATION at 0", "UN|PW200 PH300BAR 5Q|null at 0"})
    void theStandardNamesASpecificationBehindTheUnitedNationsMarkOnly(String before, String line, String expected) {
        var reading = read(before, line);
        assertThat(last(reading)).isEqualTo(expected);
        assertThat(reading.marks().specification()).hasToString(before.startsWith("DOT")
                ? before
                : expected.startsWith("null") ? "UN" : "UN ISO 9809-1");
    }

    static Stream<Arguments> twice() {
        return Stream.of(Arguments.of("5-95", "5 A 95"), Arguments.of("WC 47.6 LB", "21.6 L"),
                // 8.32828 lb and 3.785411784 L to the gallon, 0.45359237 kg to the pound
                Arguments.of("WC 47.6 LB", "WC 21.59 KG"), Arguments.of("WC 47.6 LB", "WC 47.60 LB"),
                Arguments.of("TW 17.0 LB", "TARE 7.7 KG"), Arguments.of("TARE 7.7 KG", "TARE 7.70 KG"));
    }

    @ParameterizedTest
    @MethodSource("twice")
    void theSameSaidTwiceIsNoContradiction(String one, String other) {
        for (var lines : List.of(List.of(one, other), List.of(other, one))) {
            var reading = read("DOT-4BA240", lines.getFirst(), lines.getLast());
            assertThat(warnings(reading)).noneMatch(warning -> warning.contains("says otherwise"));
            var marks = reading.marks();
            assertThat(Stream.of(marks.manufactured(), marks.waterCapacity(), marks.tare()).filter(
                    java.util.Objects::nonNull)).hasSize(1);
        }
    }

    @ParameterizedTest
    @CsvSource({"WC 47.6 LB, 21.7 L", "WC 47.6 LB, WC 48 LB", "TW 17.0 LB, TARE 7.9 KG", "TARE 7.7 KG, TARE 7.8 KG"})
    void beyondTheRoundingItIsOne(String one, String other) {
        assertThat(warnings(read("DOT-4BA240", one, other))).anyMatch(warning -> warning.contains("says otherwise"));
    }

    /** Common practice in Canada, no source: T before the tare. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"T 7.8 KG|TARE 17.196 lb", "T 7,8 KG|TARE 17.196 lb", "T: 17 LB|TARE 17 lb",
            "TW 7,800 KG|TARE at 0"})
    void aTareBehindALoneT(String line, String expected) {
        var reading = read(line);
        assertThat(last(reading)).isEqualTo(expected);
        if (line.contains(",8 ")) {
            assertThat(warnings(reading)).anyMatch(warning -> warning.contains("comma"));
        }
    }

    @Test
    void aTareInKilogramsIsKeptAsStamped() {
        assertThat(read("TARE 7.8 kg").marks().tareInKilograms()).hasToString("7.8");
        assertThat(last(read("TC-4BAM17", "08-15", "TW 7.8"))).isEqualTo("TARE ? [7.8 lb, 17.196 lb]");
    }

    @ParameterizedTest
    @CsvSource({"P15Y, SPECIFICATION, P200", "99E, REQUALIFICATION, 5-99E", "D-24, , quarter"})
    void aPieceOfAMarkIsNoSerial(String line, StampKind kind, String told) {
        for (var reading : List.of(read(line), read("DOT-4BA240", line), read("DOT-4BA240", line, "XY", "AB 5-95"))) {
            assertThat(reading.marks().serial()).isNull();
        }
        assertThat(read(line).lines().getFirst().kind()).isEqualTo(kind);
        assertThat(expected(read(line))).contains(told, "S/N");
        assertThat(read("S/N " + line).marks().serial()).hasToString(line);
    }

    /**
     * (8003)0952114112345432a/b and (8004)95211415678: GS1 Tag Data Standard 2.3, as a test quotes it; the symbology
     * identifiers from memory.
     */
    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"80030952114112345432a/b|TAG (8003)0952114112345432a/b",
            "]C180030952114112345432a/b|TAG (8003)0952114112345432a/b",
            "]d280030952114112345432a/b|TAG (8003)0952114112345432a/b",
            "]C1800495211415678|TAG (8004)95211415678", "80030952114112345532a/b|TAG at 17",
            "]C180030952114112345532a/b|TAG at 20",
            "8003123|SERIAL 8003123", "800495211415678|null ? [(8004)95211415678, 800495211415678]"})
    void aKeyAsAScannerHandsItOver(String line, String expected) {
        var reading = read(line);
        assertThat(last(reading)).isEqualTo(expected);
        if (reading.lines().getFirst().reading() instanceof Reading.Read<Stamp> && expected.startsWith("TAG")) {
            assertThat(warnings(reading)).anyMatch(warning -> warning.contains("without its brackets"));
        }
    }

    @Test
    void theCheckDigitExpectedIsNamed() {
        assertThat(expected(read("80030952114112345532a/b"))).isEqualTo("check digit 4 after 952114112345");
        assertThat(expected(read("800309521141123454"))).as("names a type, not one cylinder").contains("serial");
    }

    @Test
    void digitsRunTogetherAreDoubtedAsARequalificationToo() {
        assertThat(warnings(read("DOT-4BA240", "5-95", "1202"))).anyMatch(warning -> warning.contains(
                "digits run together"));
    }

    /** 49 CFR 180.213(f), (180.209(b)): the star stands for an expansion test. */
    @Test
    void aStarBesideALetterIsDoubted() {
        assertThat(warnings(read("DOT-4BA240", "4-90", "5-95E*"))).anyMatch(warning -> warning.contains(
                "volumetric expansion"));
        assertThat(warnings(read("DOT-4BA240", "4-90", "4/A123/18 *"))).isEmpty();
    }

    /** 49 CFR 180.213: the RIN is a letter and three digits. */
    @ParameterizedTest
    @ValueSource(strings = {"9/A12/06", "9/A1234/06", "9-A12-06", "9/AB12/06"})
    void anOddRinIsCalledThat(String line) {
        var refused = Readings.unreadable(read(line).lines().getFirst().reading());
        assertThat(refused.expected()).contains("a letter and three digits");
        assertThat(refused.index()).isEqualTo(2);
    }

    /** Directive 2010/35/EU, article 15, from memory: the number of the notified body behind the pi mark. */
    @ParameterizedTest
    @ValueSource(strings = {"pi 0036", "π 0036", "π0036"})
    void theNumberBesideThePiMarkIsThatOfTheBody(String line) {
        var reading = read(line);
        assertThat(last(reading)).isEqualTo("SPECIFICATION ADR-PI");
        assertThat(warnings(reading)).anyMatch(warning -> warning.contains("notified body"));
    }
}
