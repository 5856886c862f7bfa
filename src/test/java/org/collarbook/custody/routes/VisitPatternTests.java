package org.collarbook.custody.routes;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

import org.collarbook.custody.routes.VisitPattern.NotDriven;
import org.collarbook.custody.routes.VisitPattern.Why;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Counted out by hand on a calendar; no source but the text of RFC 5545, 3.3.10. */
class VisitPatternTests {

    private static VisitPattern driven(String rule, String from, boolean onHolidays, String skipped, String added,
            String holidays) {
        return new VisitPattern(new VisitRule(rule), LocalDate.parse(from), onHolidays, days(skipped), days(added),
                days(holidays));
    }

    private static NavigableMap<LocalDate, String> days(String list) {
        return Arrays.stream(list.split(" ")).filter(day -> !day.isEmpty()).map(LocalDate::parse)
                .collect(Collectors.toMap(day -> day, day -> "why " + day, (a, b) -> a, TreeMap::new));
    }

    private static List<LocalDate> list(String days) {
        return List.copyOf(days(days).keySet());
    }

    /** Rule, first day, from and to asked about, the visits in between. */
    @ParameterizedTest
    @CsvSource({
            // the last day of months, and the 31st of those that have one
            "FREQ=MONTHLY;BYMONTHDAY=31,2026-01-01,2026-01-01,2026-07-31,2026-01-31 2026-03-31 2026-05-31 2026-07-31",
            "FREQ=MONTHLY;BYMONTHDAY=-1,2026-01-01,2026-01-01,2026-04-30,2026-01-31 2026-02-28 2026-03-31 2026-04-30",
            "FREQ=MONTHLY,2026-01-31,2026-01-01,2026-05-31,2026-01-31 2026-03-31 2026-05-31",
            // February, of a leap year and of others
            "FREQ=MONTHLY;BYMONTHDAY=-1;BYMONTH=2,2027-01-01,2027-01-01,2029-12-31,2027-02-28 2028-02-29 2029-02-28",
            "FREQ=MONTHLY;BYMONTHDAY=29,2028-01-01,2028-01-01,2028-03-31,2028-01-29 2028-02-29 2028-03-29",
            "FREQ=MONTHLY;BYMONTHDAY=29,2027-01-01,2027-01-01,2027-03-31,2027-01-29 2027-03-29",
            "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29,2026-01-01,2026-01-01,2033-01-01,2028-02-29 2032-02-29",
            // 2100 is no leap year
            "FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=29,2090-01-01,2090-01-01,2100-12-31,2092-02-29 2096-02-29",
            // over the end of the year
            "FREQ=WEEKLY;INTERVAL=2;BYDAY=TH,2026-12-17,2026-12-17,2027-01-28,2026-12-17 2026-12-31 2027-01-14 2027-01-28",
            "FREQ=DAILY,2026-12-30,2026-12-31,2027-01-01,2026-12-31 2027-01-01",
            // UNTIL is a day of the rule itself, if it matches
            "FREQ=DAILY;UNTIL=20261127,2026-11-26,2026-11-01,2026-12-31,2026-11-26 2026-11-27",
            "FREQ=DAILY;UNTIL=20261126,2026-11-26,2026-11-01,2026-12-31,2026-11-26",
            "FREQ=DAILY;UNTIL=20261125,2026-11-26,2026-11-01,2026-12-31,",
            // COUNT counts days that match, also those before what is asked about
            "FREQ=WEEKLY;BYDAY=TH;COUNT=3,2026-11-27,2026-12-04,2027-12-31,2026-12-10 2026-12-17",
            "FREQ=DAILY;COUNT=1,2026-11-26,2026-11-01,2026-12-31,2026-11-26",
            // INTERVAL counts from the week of the first day, which begins on a Monday unless WKST says otherwise
            "FREQ=WEEKLY;INTERVAL=2;BYDAY=TH,2026-11-26,2026-11-26,2026-12-24,2026-11-26 2026-12-10 2026-12-24",
            "FREQ=WEEKLY;INTERVAL=2;BYDAY=TH,2026-11-27,2026-11-26,2026-12-24,2026-12-10 2026-12-24",
            "FREQ=WEEKLY;INTERVAL=2;BYDAY=TH,2026-11-30,2026-11-26,2026-12-31,2026-12-03 2026-12-17 2026-12-31",
            "FREQ=WEEKLY;INTERVAL=2;BYDAY=TH,2026-11-29,2026-11-26,2026-12-24,2026-12-10 2026-12-24",
            "FREQ=WEEKLY;INTERVAL=2;BYDAY=TH;WKST=SU,2026-11-29,2026-11-26,2026-12-31,2026-12-03 2026-12-17 2026-12-31",
            "FREQ=MONTHLY;INTERVAL=3;BYDAY=1MO,2026-11-15,2026-11-15,2027-08-31,2027-02-01 2027-05-03 2027-08-02",
            "FREQ=DAILY;INTERVAL=10,2026-11-26,2026-12-06,2026-12-16,2026-12-06 2026-12-16",
            // nobody comes before the first day
            "FREQ=DAILY,2026-11-26,2026-11-20,2026-11-25,",
            // nor where the days asked about end before they begin
            "FREQ=DAILY,2026-11-26,2026-12-02,2026-12-01,"})
    void theDaysOfARule(String rule, String from, String first, String last, String visits) {
        var pattern = driven(rule, from, false, "", "", "");
        assertThat(pattern.between(LocalDate.parse(first), LocalDate.parse(last)))
                .isEqualTo(visits == null ? List.of() : list(visits));
        assertThat(pattern.notDriven(LocalDate.parse(first), LocalDate.parse(last))).isEmpty();
    }

    /** Every Thursday from 2026-11-26 on; on holidays or not; skipped; added; holidays; the visits up to 2026-12-24. */
    @ParameterizedTest
    @CsvSource({"false,,,,2026-11-26 2026-12-03 2026-12-10 2026-12-17 2026-12-24",
            "false,,,2026-11-26 2026-12-24,2026-12-03 2026-12-10 2026-12-17",
            "true,,,2026-11-26 2026-12-24,2026-11-26 2026-12-03 2026-12-10 2026-12-17 2026-12-24",
            "false,2026-12-03,,,2026-11-26 2026-12-10 2026-12-17 2026-12-24",
            // skipped although it is driven on holidays
            "true,2026-11-26,,2026-11-26,2026-12-03 2026-12-10 2026-12-17 2026-12-24",
            "false,,2026-12-04,,2026-11-26 2026-12-03 2026-12-04 2026-12-10 2026-12-17 2026-12-24",
            // added on a holiday, one of the rule's and another
            "false,,2026-11-26 2026-11-27,2026-11-26 2026-11-27,2026-11-26 2026-11-27 2026-12-03 2026-12-10 2026-12-17 2026-12-24",
            // added before the first day of the rule
            "false,,2026-11-20,,2026-11-20 2026-11-26 2026-12-03 2026-12-10 2026-12-17 2026-12-24",
            // what is no day of the rule changes nothing by being skipped
            "false,2026-11-27,,,2026-11-26 2026-12-03 2026-12-10 2026-12-17 2026-12-24"})
    void exceptionsAndHolidays(boolean onHolidays, String skipped, String added, String holidays, String visits) {
        var pattern = driven("FREQ=WEEKLY;BYDAY=TH", "2026-11-26", onHolidays, text(skipped), text(added),
                text(holidays));
        var first = LocalDate.of(2026, 11, 1);
        var last = LocalDate.of(2026, 12, 24);
        assertThat(pattern.between(first, last)).isEqualTo(list(visits));
        // the other questions say the same, day by day
        for (var day = first; !day.isAfter(last); day = day.plusDays(1)) {
            var today = day;
            var all = pattern.between(first, last);
            assertThat(pattern.isVisit(day)).as(day.toString()).isEqualTo(all.contains(day));
            assertThat(pattern.previous(day)).as("before " + day)
                    .isEqualTo(all.stream().filter(today::isAfter).reduce((a, b) -> b));
            // 2026-12-24 is the last visit asked about
            if (!all.isEmpty() && day.isBefore(all.getLast())) {
                assertThat(pattern.next(day)).as("after " + day)
                        .isEqualTo(all.stream().filter(today::isBefore).findFirst());
            }
        }
    }

    private static String text(String cell) {
        return cell == null ? "" : cell;
    }

    @Test
    void whyADayOfTheRuleIsNotDriven() {
        var pattern = driven("FREQ=WEEKLY;BYDAY=TH", "2026-11-26", false, "2026-12-03 2026-12-24", "2026-12-31",
                "2026-11-26 2026-12-24 2026-12-25 2026-12-31");
        assertThat(pattern.notDriven(LocalDate.of(2026, 11, 26), LocalDate.of(2026, 12, 31))).containsExactly(
                new NotDriven(LocalDate.of(2026, 11, 26), Why.HOLIDAY, "why 2026-11-26"),
                new NotDriven(LocalDate.of(2026, 12, 3), Why.SKIPPED, "why 2026-12-03"),
                new NotDriven(LocalDate.of(2026, 12, 24), Why.SKIPPED, "why 2026-12-24"));
    }

    @Test
    void noLaterVisitIsNone() {
        var ended = driven("FREQ=DAILY;UNTIL=20261126", "2026-11-25", false, "2026-11-26", "", "");
        assertThat(ended.next(LocalDate.of(2026, 11, 24))).contains(LocalDate.of(2026, 11, 25));
        assertThat(ended.next(LocalDate.of(2026, 11, 25))).isEmpty();
        assertThat(ended.previous(LocalDate.of(2026, 11, 25))).isEmpty();
        assertThat(ended.previous(LocalDate.of(2090, 1, 1))).contains(LocalDate.of(2026, 11, 25));

        var addedLater = driven("FREQ=DAILY;UNTIL=20261126", "2026-11-25", false, "", "2027-03-01", "");
        assertThat(addedLater.next(LocalDate.of(2026, 11, 26))).contains(LocalDate.of(2027, 3, 1));
        assertThat(addedLater.next(LocalDate.of(2027, 3, 1))).isEmpty();
    }

    @Test
    void theLastVisitIsFoundHoweverLongAgo() {
        var rare = driven("FREQ=YEARLY;INTERVAL=7;BYMONTH=6;BYMONTHDAY=1", "1971-06-01", false, "", "", "");
        assertThat(rare.previous(LocalDate.of(1978, 6, 1))).contains(LocalDate.of(1971, 6, 1));
        assertThat(rare.previous(LocalDate.of(1978, 6, 2))).contains(LocalDate.of(1978, 6, 1));
        assertThat(rare.previous(LocalDate.of(1971, 6, 1))).isEmpty();
    }

    @Test
    void nothingIsDrivenAfterTheLastDay() {
        var daily = driven("FREQ=DAILY", "2026-01-01", false, "", "", "");
        assertThat(daily.next(VisitRule.LATEST.minusDays(1))).contains(VisitRule.LATEST);
        assertThat(daily.next(VisitRule.LATEST)).isEmpty();
    }
}
