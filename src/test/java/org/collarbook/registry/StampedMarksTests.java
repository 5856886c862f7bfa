package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.stream.Collectors;

import org.collarbook.platform.FieldError;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Specification;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Marks in their fields: what the specification decides for the others. */
class StampedMarksTests {

    private static StampedMarks.Reading read(String specification, String manufactured, String capacity, String tare) {
        return new StampedMarks("CYLINDER", specification, null, "1", manufactured, capacity, tare, null)
                .read(LocalDate.of(2026, 11, 25));
    }

    private static String codes(StampedMarks.Reading reading) {
        return reading.refusals().stream().map(FieldError::code).collect(Collectors.joining(" "));
    }

    @Test
    void theSpecificationDecidesTheOrderAndTheUnit() {
        var us = read("DOT-4BA240", "12/11", "WC 47.6", "TW 17");
        assertThat(us.marks()).satisfies(marks -> {
            assertThat(marks.manufactured().value()).hasToString("2011-12");
            assertThat(marks.waterCapacity().value()).hasToString("47.6 lb");
            assertThat(marks.waterCapacity().asStamped()).isEqualTo("WC 47.6");
        });
        assertThat(us.remarks()).as("pounds are assumed").extracting(FieldError::pointer)
                .containsExactly("/waterCapacity");
        assertThat(read("TC-4BAM17", "5-04", "26.2 L", "TW 17").remarks()).as("it may be kilograms")
                .extracting(FieldError::pointer).containsExactly("/tare");
        assertThat(read("EN 1442", "12/11", "26.2 L", "10 kg").marks().manufactured().value()).hasToString("2012-11");
    }

    @ParameterizedTest
    @CsvSource({"EN 1442, 2014, 26 L, 10 kg, AMBIGUOUS_MONTH",
            "TC-4BAM17, 5-04, WC 26, 10 kg, AMBIGUOUS_WATER_CAPACITY",
            "DOT-4BA240, 13-04, 26 L, 10 kg, INVALID_MONTH",
            "DOT-4BA240, 12-26, 26 L, 10 kg, IN_THE_FUTURE", "DOT-4BA240, 5-04, 26, 10 kg, INVALID_WATER_CAPACITY",
            // one refusal is enough where the specification would have told the order
            "DOT-9ZZ, 12/11, 26 L, 10 kg, UNKNOWN_SPECIFICATION"})
    void whatItDoesNotDecideIsRefused(String specification, String month, String capacity, String tare, String code) {
        assertThat(codes(read(specification, month, capacity, tare))).isEqualTo(code);
    }

    @ParameterizedTest
    @CsvSource({"EN 1442, CYLINDER", "ADR-PI, CYLINDER", "ADR-DRUM, CYLINDER", "TC-331, CARGO_TANK",
            "TC-406, CARGO_TANK", "TC-51, PORTABLE_TANK", "IM-101, PORTABLE_TANK", "IM-102, PORTABLE_TANK",
            "UN T50, PORTABLE_TANK", "TC-4BAM17, CYLINDER"})
    void aSpecificationIsStampedOnItsKindOfContainer(String specification, ContainerKind kind) {
        assertThat(Kinds.of(Specification.parse(specification))).containsExactly(kind);
    }
}
