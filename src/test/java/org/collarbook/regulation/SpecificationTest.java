package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
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
            "DOT-3AA2400/TC-3AAM165,DOT,3AA,2400,DOT-3AA2400/TC-3AAM165"})
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
            "394,0"})
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
