package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Forms of the mark as 49 CFR 178.35(f) and the trade stamp them. */
class SpecificationTest {

    @ParameterizedTest
    @CsvSource({"DOT-4BA240,DOT,4BA,240,DOT-4BA240", "dot 4ba-240,DOT,4BA,240,DOT-4BA240",
            "4BW240,DOT,4BW,240,DOT-4BW240",
            "DOT 4E240,DOT,4E,240,DOT-4E240", "DOT4E 240,DOT,4E,240,DOT-4E240", "DOT 4E,DOT,4E,,DOT-4E",
            "ICC-4BA240,ICC,4BA,240,ICC-4BA240", "ICC-4B240,ICC,4B,240,ICC-4B240",
            "DOT-4B240ET,DOT,4B240ET,240,DOT-4B240ET",
            "DOT-4B-240ET,DOT,4B240ET,240,DOT-4B240ET", "DOT-3AA1800,DOT,3AA,1800,DOT-3AA1800",
            "DOT-3A480X,DOT,3A480X,480,DOT-3A480X", "DOT-3B300,DOT,3B,300,DOT-3B300", "DOT-3,DOT,3,,DOT-3",
            "DOT-3-1800,DOT,3,1800,DOT-3-1800", "DOT-4AA480,DOT,4AA480,480,DOT-4AA480", "DOT-8,DOT,8,,DOT-8",
            "DOT-8AL,DOT,8AL,,DOT-8AL", "39,DOT,39,,DOT-39", "2P,DOT,2P,,DOT-2P", "2Q,DOT,2Q,,DOT-2Q",
            "TC-4BAM17,TC,4BAM,17,TC-4BAM17", "TC 3AAM 165,TC,3AAM,165,TC-3AAM165", "TC-3FCM,TC,3FCM,,TC-3FCM",
            "CTC-4BA240,CTC,4BA,240,CTC-4BA240", "BTC-3A1800,BTC,3A,1800,BTC-3A1800", "CRC-4B240,CRC,4B,240,CRC-4B240",
            "DOT-SP12345,SPECIAL_PERMIT,SP,,DOT-SP12345", "DOT-E 7235,SPECIAL_PERMIT,SP,,DOT-E7235",
            "DOT-SP12345-3000,SPECIAL_PERMIT,SP,3000,DOT-SP12345-3000", "UN,UN,UN,,UN",
            "UN ISO 9809-1,UN,UN,,UN ISO 9809-1",
            "ASME,ASME,ASME,,ASME", "U,ASME,ASME,,ASME", "MC-331,DOT,MC-331,,MC-331", "mc331,DOT,MC-331,,MC-331",
            "MC 330,DOT,MC-330,,MC-330", "DOT-51,DOT,51,,DOT-51", "DOT-57,DOT,57,,DOT-57",
            "DOT-4BA240/TC-4BAM17,DOT,4BA,240,DOT-4BA240/TC-4BAM17",
            "TC-4BAM17 / DOT-4BA240,DOT,4BA,240,DOT-4BA240/TC-4BAM17",
            "DOT-4BA240 TC-4BAM17,DOT,4BA,240,DOT-4BA240/TC-4BAM17", "pi 0036,ADR,PI,,ADR-PI",
            "DOT-3AA2400/TC-3AAM165,DOT,3AA,2400,DOT-3AA2400/TC-3AAM165",
            // EN 1442, EN 14427, EN 13110: designs of refillable LPG cylinders under ADR 6.2.4.1, from memory
            "EN 1442,ADR,EN 1442,,EN 1442", "EN1442,ADR,EN 1442,,EN 1442", "EN 1442:2017,ADR,EN 1442,,EN 1442",
            "π EN 1442,ADR,EN 1442,,EN 1442", "ADR EN 1442,ADR,EN 1442,,EN 1442", "adr-pi en1442,ADR,EN 1442,,EN 1442",
            "EN 14427,ADR,EN 14427,,EN 14427", "EN 13110 P15Y,ADR,EN 13110,,EN 13110 P15Y",
            "EN 1442:2006+A1:2008 P15Y,ADR,EN 1442,,EN 1442 P15Y", "EN 1442-P15Y,ADR,EN 1442,,EN 1442 P15Y",
            "π,ADR,PI,,ADR-PI", "PI,ADR,PI,,ADR-PI", "ADR-pi,ADR,PI,,ADR-PI", "ADR-DRUM,ADR,DRUM,,ADR-DRUM",
            "PRESSURE DRUM,ADR,DRUM,,ADR-DRUM",
            // the tanks of CSA B620 and B622, which bear the numbers of 49 CFR under TC
            "TC-331,TC,331,,TC-331", "TC 331,TC,331,,TC-331", "TC-338,TC,338,,TC-338", "TC-406,TC,406,,TC-406",
            "TC407,TC,407,,TC-407", "TC-412,TC,412,,TC-412", "TC-51,TC,51,,TC-51", "TC-SU5931,TC,SU,,TC-SU5931",
            "TC-SU 5931,TC,SU,,TC-SU5931", "IM-101,DOT,IM-101,,IM-101", "im 102,DOT,IM-102,,IM-102",
            "DOT-IM101,DOT,IM-101,,IM-101", "UN T50,UN,UN,,UN T50",
            // as a scanner or an office program writes them
            "DOT–4BA240,DOT,4BA,240,DOT-4BA240", "ＤＯＴ－４ＢＡ２４０,DOT,4BA,240,DOT-4BA240",
            "'  dot   4ba240 ',DOT,4BA,240,DOT-4BA240"})
    void reads(String text, Authority authority, String family, Integer pressure, String canonical) {
        Specification read = Specification.parse(text);
        assertThat(read.authority()).isEqualTo(authority);
        assertThat(read.family()).isEqualTo(family);
        assertThat(read.pressure()).isEqualTo(pressure);
        assertThat(read).hasToString(canonical);
        assertThat(Specification.parse(read.toString())).isEqualTo(read);
    }

    /** A DOT mark is in psig, a TC mark in bar: the second is never taken for the first. */
    @Test
    void onlyPsigIsPsig() {
        assertThat(Specification.parse("TC-4BAM17").servicePressurePsig()).isNull();
        assertThat(Specification.parse("DOT-4BA240").servicePressurePsig()).isEqualTo(240);
    }

    @ParameterizedTest
    @CsvSource({"DOT-9ZZ,4", "4BA240X,6", "DOT-,4", "'',0", "HELLO,0", "DOT-4BA240/,11", "DOT-4BA240/X,11", "UNX,2",
            "394,0", "EN 12,0", "EN 123456,0", "EN 1442 X,8", "PIX,0", "DRUM,0", "TC-333,3", "TC-331X,3", "TC-SU,3",
            "IM-103,0", "'DOT-4BA\u0000240',7", "DOT-\ud800,4", "'  DOT-9ZZ',6", "DOT-4BA\u200b240,7"})
    void refusesWithTheIndex(String text, int index) {
        assertThat(Specification.tryParse(text)).isInstanceOfSatisfying(ParseResult.Rejected.class, rejected -> {
            assertThat(rejected.index()).as("%s", rejected).isEqualTo(index);
            assertThat(rejected.expected()).isNotBlank();
        });
        assertThatThrownBy(() -> Specification.parse(text)).isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(
                        "expected");
    }

    @Test
    void saysWhenItReadADotMarkInto() {
        assertThat(Specification.tryParse("4BW240"))
                .isEqualTo(new ParseResult.Parsed<>(Specification.parse("DOT-4BW240"), List
                        .of("no authority is stamped; read as DOT")));
    }

    /** Groups of cylinders with the longer period of ADR P200(12) are marked P15Y; it is a status, not a design. */
    @Test
    void fifteenYearsAreADetailAndAnEquivalencyCertificateIsOne() {
        assertThat(Specification.parse("π EN 1442 P15Y").detail()).isEqualTo("P15Y");
        assertThat(Specification.parse("EN 1442").detail()).isNull();
        assertThat(Specification.parse("TC-SU 5931").detail()).isEqualTo("SU5931");
    }

    @Test
    void theEditionOfAStandardIsDroppedWithAWarning() {
        assertThat(Specification.tryParse("EN 1442:2017")).isEqualTo(new ParseResult.Parsed<>(Specification.parse(
                "EN 1442"), List.of("the edition of the standard is not kept")));
    }

    @Test
    void aControlCharacterInsideIsRefusedWhereItStands() {
        for (String control : List.of("\n", "\r", "\u0000", "\u001b", "\u0085", "\u2028", "\ufeff")) {
            assertThat(Readings.unreadable(Reading.of("", Specification.tryParse("DOT" + control + "4BA240"))).index())
                    .isEqualTo(3);
        }
        assertThat(Specification.parse("\tDOT\t4BA240\r\n")).as("around it, as a scanner sends it")
                .hasToString("DOT-4BA240");
    }

    @Test
    void anOddDashIsReadWithAWarning() {
        assertThat(Readings.warnings(Reading.of("", Specification.tryParse("DOT—4BA240")))).hasSize(1);
    }

    @Test
    void whatIsPrintedIsReadBack() {
        long seed = 20261125L;
        Random random = new Random(seed);
        for (int i = 0; i < 20_000; i++) {
            Specification any = RandomSpecification.of(random);
            assertThat(Specification.parse(any.toString())).as("seed %d: %s", seed, any).isEqualTo(any);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"A123", "b045"})
    void readsARin(String text) {
        assertThat(Rin.parse(text)).hasToString(text.toUpperCase(java.util.Locale.ROOT));
    }

    @ParameterizedTest
    @CsvSource({"A12,3", "1234,0", "A12B,3", "A1234,4", "'',0"})
    void refusesAnotherRin(String text, int index) {
        assertThat(Rin.tryParse(text)).isInstanceOfSatisfying(ParseResult.Rejected.class,
                rejected -> assertThat(rejected
                        .index()).isEqualTo(index));
    }
}
