package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.collar;

import java.time.YearMonth;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Readings;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.StampedMonth;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** "12/11" is November 2012 under UN 6.2.2.7.7(c) and December 2011 in the US and Canada, 49 CFR 178.35(f). */
@Trap(of = Catalogue.WORLD, number = 1)
class TwelveSlashElevenTest {

    @ParameterizedTest
    @CsvSource({"UN ISO 9809-1,2012-11", "EN 1442,2012-11", "ADR-PI,2012-11", "DOT-4BA240,2011-12",
            "TC-4BAM17,2011-12"})
    void theSchemeDecides(String stamp, YearMonth month) {
        assertThat(Readings.value(StampedMonth.read("12/11", collar(stamp)))).isEqualTo(month);
        Reading<RequalificationMark> mark = RequalificationMark.read("12/11", collar(stamp));
        assertThat(Readings.value(mark).month()).isEqualTo(month);
        assertThat(mark.raw()).as("kept as stamped").isEqualTo("12/11");
    }

    @Test
    void withoutASchemeItIsBoth() {
        assertThat(Readings.ambiguous(StampedMonth.read("12/11", Collar.unknown(Cases.TODAY))).readings())
                .containsExactly(YearMonth.of(2011, 12), YearMonth.of(2012, 11));
        assertThat(RequalificationMark.read("12/11", Collar.unknown(Cases.TODAY)))
                .isInstanceOf(Reading.Ambiguous.class);
    }
}
