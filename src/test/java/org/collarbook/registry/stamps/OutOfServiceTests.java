package org.collarbook.registry.stamps;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;

import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Readings;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * 49 CFR 180.205(i) of the 2019 edition: "a series of X's over the DOT specification number and the marked pressure", or
 * "CONDEMNED".
 */
class OutOfServiceTests {

    private static CollarReading read(String... lines) {
        return CollarReading.of(List.of(lines), Collar.unknown(LocalDate.of(2026, 11, 25)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"CONDEMNED", "condemned", "Condemned 5-20", "DOT-4BA240 CONDEMNED", "C O N D E M N E D",
            "XY CONDEMNED", "XXX", "XXXX", "X X X X", "XXX-XXXXXX", "xxxx xxx", "ＸＸＸＸ", "DOT-XXXXXX", "DOT-4BAXXX",
            "DOT-XXXXX-1234-XY AB 5-95", "1234 XXXX", "S/N 12 CONDEMNED"})
    void aMarkOfCondemnationIsSeenWhereverItStands(String line) {
        for (var before : List.of(List.<String>of(), List.of("DOT-4BA240"), List.of("DOT-4BA240", "S/N 1", "XY"))) {
            var lines = new java.util.ArrayList<>(before);
            lines.add(line);
            var reading = CollarReading.of(lines, Collar.unknown(LocalDate.of(2026, 11, 25)));
            var last = reading.lines().getLast();
            assertThat(last.kind()).as(lines.toString()).isEqualTo(StampKind.CONDEMNED);
            assertThat(Readings.warnings(last.reading())).first().asString().contains("must not be filled",
                    "registered as serviceable");
            assertThat(reading.marks().condemned()).isEqualTo(Condemnation.CITATION);
            assertThat(reading.marks().warnings()).singleElement().asString().contains("must not be filled");
        }
    }

    @Test
    void theFourLinesOfACollarDoNotHideIt() {
        var reading = read("DOT-3A1800", "1234", "XXX", "AB 5-95");
        assertThat(reading.lines().get(2).kind()).isEqualTo(StampKind.CONDEMNED);
        assertThat(reading.marks().maker()).isNull();
        assertThat(reading.marks().specification()).hasToString("DOT-3A1800");
        assertThat(read("DOT-3A1800", "1234", "SCRAP", "AB 5-95").marks().maker()).isNull();
    }

    @Test
    void theCitationIsThatOfTheRuleBook() {
        var citation = RuleBookLoader.standard().rules().stream().filter(rule -> rule.id().equals("us.180.205.j"))
                .findFirst().orElseThrow().values().getFirst().citation();
        assertThat(Condemnation.CITATION).usingRecursiveComparison().ignoringFields("section").isEqualTo(citation);
        assertThat(citation.section()).endsWith(Condemnation.CITATION.section());
        assertThat(citation.edition()).contains("2019");
    }

    @ParameterizedTest
    @ValueSource(strings = {"3AX2400", "DOT-3AAX2400", "S/N XXX1", "(8004)XXX123", "XX", "12XXX3"})
    void anXAloneCondemnsNothing(String line) {
        var reading = read(line);
        assertThat(reading.marks().condemned()).isNull();
        assertThat(reading.marks().warnings()).isEmpty();
    }

    /** Common practice, no source: the regulation asks for no mark on a rejected cylinder, 180.205(h) of 2019. */
    @ParameterizedTest
    @ValueSource(strings = {"REJECTED", "rejected 4-20", "SCRAP", "XY SCRAPPED"})
    void aWordOfRejectionIsToldAndIsNoSerial(String line) {
        var reading = read("DOT-4BA240", line);
        assertThat(reading.lines().getLast().kind()).isEqualTo(StampKind.REJECTED);
        assertThat(Readings.warnings(reading.lines().getLast().reading())).first().asString().contains(
                "do not fill it");
        assertThat(reading.marks().warnings()).singleElement().asString().contains("do not fill it");
        assertThat(reading.marks().serial()).isNull();
        assertThat(reading.marks().maker()).isNull();
        assertThat(reading.marks().condemned()).isNull();
    }
}
