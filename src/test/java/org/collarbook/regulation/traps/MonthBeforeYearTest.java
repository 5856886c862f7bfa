package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.collar;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.whyNotFill;

import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Readings;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampedMonth;
import org.junit.jupiter.api.Test;

/** Two-digit years, marks from before the RIN, the RIN read clockwise, MM-YY and not YY-MM: 49 CFR 178.35(f), 180.213. */
@Trap(of = Catalogue.US, number = 8)
class MonthBeforeYearTest {

    /** A web explainer (felttheater.com) reads the collar "1202" as February 2012. */
    @Test
    void twelveOhTwoIsDecember2002() {
        assertThat(Readings.value(StampedMonth.read("1202", collar("DOT-4BA240")))).isEqualTo(YearMonth.of(2002, 12));
        assertThat(Readings.value(StampedMonth.read("5-95", collar("DOT-4BA240")))).isEqualTo(YearMonth.of(1995, 5));
        assertThat(StampedMonth.read("1302", collar("DOT-4BA240"))).isInstanceOf(Reading.Unreadable.class);
    }

    @Test
    void twoDigitsLeaveTheCenturyToTheOriginalTest() {
        Specification stamp = Specification.parse("DOT-4BA240");
        assertThat(Readings.ambiguous(RequalificationMark.read("5-16", Collar.of(stamp, YearMonth.of(1915, 1),
                Cases.TODAY))).readings()).hasSize(2);
        assertThat(Readings.value(RequalificationMark.read("5-16", Collar.of(stamp, YearMonth.of(1995, 1),
                Cases.TODAY))).month()).isEqualTo(YearMonth.of(2016, 5));
    }

    /** A1 above 32 in the square is A123, of September 2006. */
    @Test
    void theRinGoesClockwise() {
        RequalificationMark mark = Readings.value(RequalificationMark.read("9 A1 32 06", collar("DOT-4BA240")));
        assertThat(mark.month()).isEqualTo(YearMonth.of(2006, 9));
        assertThat(mark.rin()).hasToString("A123");
    }

    @Test
    void before2004MayAMarkHadNoRin() {
        var old = Requalification.passed(YearMonth.of(2004, 5), Method.VOLUMETRIC_EXPANSION);
        var late = Requalification.passed(YearMonth.of(2004, 6), Method.VOLUMETRIC_EXPANSION);
        var day = "2016-05-01";
        var facts = cylinder("DOT-4BA240", "1994-01").enable(Set.of("SECONDARY"));
        assertThat(Asked.on(day, facts.requalifications(List.of(old))).mayFill().allowed()).isTrue();
        assertThat(whyNotFill(Asked.on(day, facts.requalifications(List.of(late)))))
                .containsExactly(ReasonCode.RIN_NOT_RECORDED);
    }
}
