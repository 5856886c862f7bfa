package org.collarbook.dispatch.plans;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Weeks at the end of years as PostgreSQL's documentation of {@code isoyear} and {@code week} has them, and by the calendar. */
class IsoWeekTests {

    @ParameterizedTest
    @CsvSource({"2005-01-01, 2004-W53", "2006-01-01, 2005-W52", "2012-12-31, 2013-W01", "2026-12-28, 2026-W53",
            "2027-01-03, 2026-W53", "2027-01-04, 2027-W01"})
    void aWeekBelongsToTheYearOfItsThursday(LocalDate day, String week) {
        assertThat(IsoWeek.of(day)).hasToString(week);
        assertThat(IsoWeek.tryParse(week)).contains(IsoWeek.of(day));
        assertThat(IsoWeek.of(day).monday()).isBetween(day.minusDays(6), day);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2027-W53", "2026-W54", "2026-W00", "2026-W5", "2026W52", "2026-52", "", "2026-w52"})
    void whatIsNoWeekIsRefused(String text) {
        assertThat(IsoWeek.tryParse(text)).isEmpty();
    }
}
