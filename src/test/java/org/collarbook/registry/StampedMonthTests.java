package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Random;

import org.collarbook.registry.StampedMonth.Ambiguous;
import org.collarbook.registry.StampedMonth.Read;
import org.collarbook.registry.StampedMonth.Unreadable;
import org.collarbook.regulation.Specification;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StampedMonthTests {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private static StampedMonth read(String text) {
        return StampedMonth.read(text, TODAY, Specification.parse("DOT-4BA240"));
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
        assertThat(read(text)).isEqualTo(new Read(YearMonth.parse(month)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"12-26", "12-2026", "2027-01", "1-27", "1-9999"})
    void aFutureMonthIsNamedAsSuch(String text) {
        assertThat(read(text)).isInstanceOfSatisfying(Unreadable.class,
                unreadable -> assertThat(unreadable.future()).isTrue());
    }

    @ParameterizedTest
    @CsvSource({"13-04, 0", "0-04, 0", "1304, 0", "2004-13, 5", "12-1899, 3", "5, 1", "'', 0", "May 04, 0",
            "5-1-2004, 0", "5-4, 0", "5-20045, 0", "5 ABCD 95, 2", "-5-95, 0"})
    void othersAreRefusedWithThePlace(String text, int index) {
        assertThat(read(text)).isInstanceOfSatisfying(Unreadable.class, unreadable -> {
            assertThat(unreadable.index()).isEqualTo(index);
            assertThat(unreadable.expected()).isNotBlank();
            assertThat(unreadable.future()).isFalse();
        });
    }

    /** ISO 13769 (from memory) puts the year first on UN cylinders; the same stamp on a US one is December 2011. */
    @Test
    void aUnMarkMayMeanEitherOrder() {
        var un = Specification.parse("UN ISO 9809-1");
        assertThat(StampedMonth.read("12/11", TODAY, un)).isEqualTo(new Ambiguous(List.of(YearMonth.of(2011, 12),
                YearMonth.of(2012, 11))));
        assertThat(StampedMonth.read("05/05", TODAY, un)).isEqualTo(new Read(YearMonth.of(2005, 5)));
        assertThat(StampedMonth.read("98/04", TODAY, un)).isEqualTo(new Read(YearMonth.of(1998, 4)));
        // UN Model Regulations, 17th revision, page 676: "ISO 9809-1 F IB 2000/12"
        assertThat(StampedMonth.read("2000/12", TODAY, un)).isEqualTo(new Read(YearMonth.of(2000, 12)));
    }

    @Test
    void twoCenturiesAreBothNamedOnceBothArePlausible() {
        assertThat(StampedMonth.read("5-42", LocalDate.of(2045, 1, 1), null))
                .isEqualTo(new Ambiguous(List.of(YearMonth.of(1942, 5), YearMonth.of(2042, 5))));
    }

    @Test
    void printedMonthsAreReadBackTheSame() {
        long seed = 20261125;
        var random = new Random(seed);
        for (int i = 0; i < 2_000; i++) {
            var month = YearMonth.of(1900, 1).plusMonths(random.nextInt(126 * 12 + 11));
            assertThat(read(StampedMonth.print(month))).as("seed %d", seed).isEqualTo(new Read(month));
        }
    }
}
