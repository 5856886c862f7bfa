package org.collarbook.holds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.collarbook.registry.Serial;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SerialRangeTests {

    private static SerialRange range(String first, String last) {
        return SerialRange.tryOf(Serial.parse(first), Serial.parse(last));
    }

    @ParameterizedTest
    @CsvSource({"AB1000,AB1999,2", "0998,1002,0", "A1B0999,A1B1000,3", "AB7,AB7,2", "ABC,ABC,3",
            "'12 0099','12 0100',3",
            "9,9,0"})
    void runsOverTheDigitsAtTheEnd(String first, String last, int prefix) {
        assertThat(range(first, last)).isNotNull();
        assertThat(range(first, last).prefix()).isEqualTo(prefix);
    }

    @ParameterizedTest
    @CsvSource({"AB1000,AC1999", "AB999,AB1000", "AB2,AB1", "ABC,ABD", "AB1,ABC", "AB12,AB1X", "A100,1000",
            "1000,A100"})
    void isNoneWhereNobodyCanCount(String first, String last) {
        assertThat(range(first, last)).isNull();
    }

    @Test
    void aRangeThatIsNoneIsNotMade() {
        assertThatThrownBy(() -> new SerialRange(Serial.parse("AB2"), Serial.parse("AB1")))
                .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("AB2 to AB1");
    }
}
