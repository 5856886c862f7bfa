package org.collarbook.dispatch.lists;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * What comes back at a visit: that whose last day lies before the site's next visit. Due months by 49 CFR 180.209(e),
 * twelve years from the original test, met through the month's last day by 180.205(c); today is 2026-11-25.
 */
@RegisterTest
class VisitRuleTests {

    private static final int YEARS = 12;

    private final Api api;
    private final Given given;
    private final GivenRoutes routes;
    private final TestClock clock;

    VisitRuleTests(Api api, Given given, JdbcClient jdbc, TestClock clock) {
        this.api = api;
        this.given = given;
        this.routes = new GivenRoutes(api, given, jdbc);
        this.clock = clock;
    }

    private UUID siteWith(YearMonth due) {
        var site = given.site(given.customer());
        routes.cylinder(site, due.minusYears(YEARS).toString());
        return site;
    }

    private static String reasons(Answer list, int stop) {
        var codes = list.at("/stops/" + stop + "/containers").valueStream()
                .map(container -> container.at("/reason/code").asString()).toList();
        return codes.isEmpty() ? "-" : String.join(" ", codes);
    }

    private static List<LocalDate> days(String text) {
        return Arrays.stream(text.split(" ")).map(LocalDate::parse).toList();
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = '|', textBlock = """
            last day is the day of the next visit      | 2026-12 | 2026-12-03 2026-12-31 | 2026-12-03 | -
            last day is the day before the next visit  | 2026-12 | 2026-12-03 2027-01-01 | 2026-12-03 | DUE_BEFORE
            next visit in the middle of the due month  | 2026-12 | 2026-12-03 2026-12-17 | 2026-12-03 | -
            next visit on the first of the due month   | 2026-12 | 2026-11-26 2026-12-01 | 2026-11-26 | -
            next visit on the first of the month after | 2026-11 | 2026-11-26 2026-12-01 | 2026-11-26 | DUE_BEFORE
            due the month before the next visit's      | 2026-11 | 2026-11-26 2026-12-31 | 2026-11-26 | DUE_BEFORE
            February, next on its last day             | 2027-02 | 2027-02-04 2027-02-28 | 2027-02-04 | -
            February, next on the first of March       | 2027-02 | 2027-02-04 2027-03-01 | 2027-02-04 | DUE_BEFORE
            leap February, next on the 28th            | 2028-02 | 2028-02-03 2028-02-28 | 2028-02-03 | -
            leap February, next on the 29th            | 2028-02 | 2028-02-03 2028-02-29 | 2028-02-03 | -
            leap February, next on the first of March  | 2028-02 | 2028-02-03 2028-03-01 | 2028-02-03 | DUE_BEFORE
            leap February, on the last day itself      | 2028-02 | 2028-02-29 2028-03-01 | 2028-02-29 | DUE_BEFORE
            over the year's end                        | 2027-01 | 2026-12-31 2027-01-31 | 2026-12-31 | -
            over the year's end, a day later           | 2027-01 | 2026-12-31 2027-02-01 | 2026-12-31 | DUE_BEFORE
            overdue on the visit                       | 2026-11 | 2026-12-01 2026-12-02 | 2026-12-01 | OVERDUE
            overdue today                              | 2026-10 | 2026-11-26 2026-11-27 | 2026-11-26 | OVERDUE
            no later visit                             | 2031-01 | 2026-12-03            | 2026-12-03 | NO_LATER_VISIT
            no later visit and overdue                 | 2026-11 | 2026-12-03            | 2026-12-03 | OVERDUE
            visit today, asked for by no day           | 2026-11 | 2026-11-25 2026-12-01 |            | DUE_BEFORE
            visit today, next at the end of the month  | 2026-11 | 2026-11-25 2026-11-30 |            | -
            yesterday's visit is not the next one      | 2026-11 | 2026-11-24 2026-11-30 2026-12-01 |  | DUE_BEFORE
            past visit, next before the last day       | 2026-11 | 2026-11-18 2026-11-25 | 2026-11-18 | -
            past visit, next after the last day        | 2026-11 | 2026-11-18 2026-12-02 | 2026-11-18 | DUE_BEFORE
            past visit, overdue since                  | 2026-10 | 2026-10-29 2026-11-05 | 2026-10-29 | OVERDUE
            """)
    void onBothSidesOfEachBoundary(String name, YearMonth due, String visits, @Nullable String asked, String reason) {
        var route = routes.on(given.site(null), days(visits), siteWith(due));
        assertThat(reasons(routes.list(route, asked), 0)).isEqualTo(reason);
    }

    @Test
    void aNextVisitThatIsSkippedDoesNotCount() {
        var route = routes.route(given.site(null), "FREQ=WEEKLY;BYDAY=TH", siteWith(YearMonth.of(2026, 12)));
        assertThat(reasons(routes.list(route, "2026-12-24"), 0)).isEqualTo("-");
        routes.except(route, LocalDate.of(2026, 12, 31), "SKIPPED", "stock-taking");
        var list = routes.list(route, "2026-12-24");
        assertThat(list.text("/stops/0/next")).isEqualTo("2027-01-07");
        assertThat(reasons(list, 0)).isEqualTo("DUE_BEFORE");
        assertThat(list.text("/stops/0/containers/0/reason/text"))
                .isEqualTo("Its last day is 2026-12-31, before the next visit on 2027-01-07.");
    }

    @Test
    void aNextVisitOnAHolidayDoesNotCount() {
        var day = LocalDate.of(2027, 9, 30);
        var route = routes.route(given.site(null), "FREQ=WEEKLY;BYDAY=TH", siteWith(YearMonth.of(2027, 9)));
        routes.notOnHolidays(route);
        assertThat(reasons(routes.list(route, "2027-09-23"), 0)).isEqualTo("-");
        routes.holiday(day, "Orchard Day");
        try {
            assertThat(reasons(routes.list(route, "2027-09-23"), 0)).isEqualTo("DUE_BEFORE");
            var refused = api.as(Role.DISPATCHER).get("/api/routes/" + route + "/pull-list?visit=" + day)
                    .expectProblem(422, "NOT_A_VISIT");
            assertThat(refused.text("/previous")).isEqualTo("2027-09-23");
            assertThat(refused.text("/next")).isEqualTo("2027-10-07");
            assertThat(refused.text("/why")).isEqualTo(route + " holiday: Orchard Day");
        } finally {
            routes.noHoliday(day);
        }
    }

    /** It survives until the other route calls there, though its own comes later. */
    @Test
    void theNextVisitIsByWhicheverRouteComesFirst() {
        var site = siteWith(YearMonth.of(2026, 12));
        var depot = given.site(null);
        var slow = routes.on(depot, days("2026-12-03 2027-02-04"), site);
        assertThat(reasons(routes.list(slow, "2026-12-03"), 0)).isEqualTo("DUE_BEFORE");
        var other = routes.on(given.site(null), days("2026-12-31 2027-06-03"), site);
        assertThat(reasons(routes.list(slow, "2026-12-03"), 0)).isEqualTo("-");
        assertThat(routes.list(slow, "2026-12-03").text("/stops/0/next")).isEqualTo("2026-12-31");
        assertThat(reasons(routes.list(other, "2026-12-31"), 0)).isEqualTo("DUE_BEFORE");
        var bySite = api.as(Role.DISPATCHER).get("/api/pull-list?site=" + site).expect(200);
        assertThat(bySite.text("/stops/0/route")).isEqualTo(slow);
        assertThat(bySite.text("/stops/0/visit")).isEqualTo("2026-12-03");
        assertThat(reasons(bySite, 0)).isEqualTo("-");
    }

    /** Two routes at one site on one day: the next visit is on a later day. */
    @Test
    void anotherRouteOnTheSameDayIsNotTheNextVisit() {
        var site = siteWith(YearMonth.of(2026, 12));
        var depot = given.site(null);
        var one = routes.on(depot, days("2026-12-03 2027-01-07"), site);
        routes.on(depot, days("2026-12-03 2027-01-14"), site);
        assertThat(routes.list(one, "2026-12-03").text("/stops/0/next")).isEqualTo("2027-01-07");
        var byDepot = api.as(Role.DISPATCHER).get("/api/pull-list?visit=2026-12-03&depot=" + depot).expect(200);
        assertThat(byDepot.at("/stops")).hasSize(1);
        assertThat(byDepot.at("/count").asInt()).isEqualTo(1);
    }

    @Test
    void aSiteWithoutARouteListsEverythingThatHasAMonth() {
        var site = siteWith(YearMonth.of(2031, 1));
        var list = api.as(Role.DISPATCHER).get("/api/pull-list?site=" + site).expect(200);
        assertThat(reasons(list, 0)).isEqualTo("NO_VISIT_KNOWN");
        assertThat(list.at("/stops/0/visit").isMissingNode()).isTrue();
        assertThat(list.at("/stops/0/containers/0/reason/citation/section").asString()).isEqualTo("180.209(e)");
    }

    @Test
    void aRouteThatIsDrivenNoMoreHasNoNextVisit() {
        var route = routes.on(given.site(null), days("2026-11-18"), siteWith(YearMonth.of(2026, 10)));
        var refused = api.as(Role.DISPATCHER).get("/api/routes/" + route + "/pull-list")
                .expectProblem(422, "NOT_A_VISIT");
        assertThat(refused.text("/previous")).isEqualTo("2026-11-18");
        assertThat(refused.at("/next").isMissingNode()).isTrue();
        assertThat(reasons(routes.list(route, "2026-11-18"), 0)).isEqualTo("OVERDUE");
    }

    /** 2026-11-26 has begun at UTC and not yet at the depot, America/Chicago. */
    @Test
    void todayIsTheDateAtTheDepot() {
        var route = routes.on(given.site(null), days("2026-11-25 2026-12-02"), siteWith(YearMonth.of(2026, 11)));
        clock.set(LocalDate.of(2026, 11, 26).atTime(3, 0).toInstant(ZoneOffset.UTC));
        assertThat(routes.list(route, null).text("/asked/visit")).isEqualTo("2026-11-25");
        clock.set(LocalDate.of(2026, 11, 26).atTime(7, 0).toInstant(ZoneOffset.UTC));
        assertThat(routes.list(route, null).text("/asked/visit")).isEqualTo("2026-12-02");
    }

    /** The bound of the statement, against the definition: the last day of the month lies before the day. */
    @Test
    void theBoundIsTheDefinition() {
        LocalDate.of(2026, 12, 1).datesUntil(LocalDate.of(2029, 1, 1)).forEach(day -> {
            var last = new Until.NextVisit(day).lastDue();
            for (var due = YearMonth.of(2026, 10); due.getYear() < 2030; due = due.plusMonths(1)) {
                assertThat(last != null && !due.atDay(1).isAfter(last)).as("%s before %s", due, day)
                        .isEqualTo(due.atEndOfMonth().isBefore(day));
            }
        });
    }
}
