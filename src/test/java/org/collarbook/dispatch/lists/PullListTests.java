package org.collarbook.dispatch.lists;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.inspection.Requalifications;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Rin;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Due months by 49 CFR 180.209(e): twelve years from the original test; good through the last day, 180.205(c). */
@RegisterTest
class PullListTests {

    private final Api api;
    private final Given given;
    private final Requalifications requalifications;
    private final TestClock clock;
    private final GivenRoutes routes;

    PullListTests(Api api, Given given, Requalifications requalifications, TestClock clock, JdbcClient jdbc) {
        this.routes = new GivenRoutes(api, given, jdbc);
        this.api = api;
        this.given = given;
        this.requalifications = requalifications;
        this.clock = clock;
    }

    private UUID cylinderAt(UUID site, String manufactured) {
        var body = Given.cylinder();
        body.put("manufactured", manufactured);
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    private Answer list(String where, String before) {
        return api.as(Role.DISPATCHER).get("/api/pull-list?" + where + "&before=" + before).expect(200);
    }

    /** The last day of due month 2026-12 is 2026-12-31: it lies before 2027-01-01 and not before 2026-12-31. */
    @ParameterizedTest
    @CsvSource({"2026-12-01, 0", "2026-12-30, 0", "2026-12-31, 0", "2027-01-01, 1", "2027-01-31, 1", "2028-02-29, 1"})
    void listsWhatHasItsLastDayBeforeTheDate(String before, int listed) {
        var site = given.site(given.customer());
        cylinderAt(site, "2014-12");
        assertThat(list("site=" + site, before).at("/count").asInt()).isEqualTo(listed);
    }

    @Test
    void groupsBySiteWithReasonCitationAndSizes() {
        var customer = given.customer();
        var first = given.site(customer);
        var second = given.site(customer);
        cylinderAt(first, "2010-05");
        cylinderAt(second, "2015-02");
        cylinderAt(second, "2024-01");
        var answer = list("customer=" + customer, "2027-06-01");
        assertThat(answer.at("/count").asInt()).isEqualTo(2);
        assertThat(answer.at("/sizes/0/size").asString()).isEqualTo("20 lb");
        assertThat(answer.at("/sizes/0/load").asInt()).isEqualTo(2);
        var overdue = answer.at("/stops/0/containers/0");
        assertThat(overdue.at("/status").asString()).isEqualTo("OVERDUE");
        assertThat(overdue.at("/due").asString()).isEqualTo("2022-05");
        assertThat(overdue.at("/reason/code").asString()).isEqualTo("OVERDUE");
        assertThat(overdue.at("/reason/citation/section").asString()).isEqualTo("180.209(e)");
        assertThat(answer.at("/stops/1/containers/0/reason/code").asString()).isEqualTo("DUE_BEFORE");
        assertThat(answer.at("/caution").asString()).contains("Look at the container before every fill");
    }

    @Test
    void countsWhatCannotBeToldInsteadOfCallingItFine() {
        var site = given.site(given.customer());
        var body = Given.cylinder();
        body.remove("collarRead");
        given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        var answer = list("site=" + site, "2030-01-01");
        assertThat(answer.at("/count").asInt()).isZero();
        assertThat(answer.at("/stops/0/undetermined")).hasSize(1);
    }

    /** At a Canadian site the Canadian rule is off; that the cylinder is overdue by 49 CFR stands all the same. */
    @Test
    void whatOneAuthorityCallsOverdueIsListedThoughAnotherIsSilent() {
        var depot = Given.depot();
        depot.put("jurisdiction", "CA");
        var site = UUID.fromString(api.as(Role.CLERK).post("/api/sites", depot).expect(201).id());
        cylinderAt(site, "2010-05");
        var answer = list("site=" + site, "2027-01-01");
        assertThat(answer.at("/count").asInt()).isEqualTo(1);
        assertThat(answer.at("/stops/0/undetermined")).hasSize(1);
        var overdue = answer.at("/stops/0/containers/0");
        assertThat(overdue.at("/jurisdiction").asString()).isEqualTo("US");
        assertThat(overdue.at("/status").asString()).isEqualTo("OVERDUE");
    }

    /** One degree of latitude is 111.2 km on a sphere of 6,371 km radius (2 * pi * 6371 / 360). */
    @ParameterizedTest
    @CsvSource({"111, 0", "112, 1"})
    void findsSitesNearAPoint(String kilometres, int listed) {
        var site = Given.depot();
        // a spot of the ocean that no other test uses
        site.put("latitude", -46.0);
        site.put("longitude", -130.0 - listed);
        var id = UUID.fromString(api.as(Role.CLERK).post("/api/sites", site).expect(201).id());
        cylinderAt(id, "2010-05");
        assertThat(list("near=-45.0," + (-130.0 - listed) + "," + kilometres, "2027-01-01").at("/count").asInt())
                .isEqualTo(listed);
    }

    @Test
    void aMoveTakesAContainerOffOneListAndOntoAnother() {
        var here = given.site(given.customer());
        var there = given.site(given.customer());
        var id = cylinderAt(here, "2010-05");
        given.moved(id, there, "2026-11-21T09:00:00Z");
        assertThat(list("site=" + here, "2027-01-01").at("/count").asInt()).isZero();
        assertThat(list("site=" + there, "2027-01-01").at("/count").asInt()).isEqualTo(1);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"before=2027-01-01 | 400", "site=x&customer=y&before=2027-01-01 | 400",
            "site=nowhere&before=2027-01-01 | 404", "customer=nobody&before=2027-01-01 | 404",
            "near=1,2&before=2027-01-01 | 400", "near=91,0,5&before=2027-01-01 | 400",
            "near=NaN,0,5&before=2027-01-01 | 400", "near=1,2,-3&before=2027-01-01 | 400",
            "site=x&before=2027-02-30 | 400", "site=x&before=soon | 400", "site=x | 404",
            "site=x&before=1999-12-31 | 400", "site=x&before=2200-01-01 | 400", "depot=x | 404", "near=1,2 | 400",
            "site=x&visit=2026-12-03 | 400", "depot=x&visit=2026-12-03&before=2027-01-01 | 400",
            "depot=x&visit=2026-13-03 | 400", "depot=x&site=x | 400", "visit=2026-12-03 | 400",
            "customer=nobody&format=csv | 404", "customer=nobody&before=soon&format=csv | 400"})
    void badQuestionsAreRefused(String query, int status) {
        api.as(Role.DISPATCHER).get("/api/pull-list?" + query)
                .expectProblem(status, status == 404 ? "NOT_FOUND" : "INVALID_INPUT");
    }

    @Test
    void aSiteIsNamedByCodeToo() {
        var site = Given.depot();
        api.as(Role.CLERK).post("/api/sites", site).expect(201);
        assertThat(list("site=" + site.get("code"), "2027-01-01").text("/stops/0/site/code"))
                .isEqualTo(site.get("code"));
    }

    /** DOT 3HT serves twenty-four years, 49 CFR 180.209(k): made in January 2003, its last day is 2027-01-31. */
    @ParameterizedTest
    @CsvSource({"2027-01-31, 0", "2027-02-01, 1"})
    void listsWhatIsAtTheEndOfItsServiceLifeBeforeTheDate(String before, int listed) {
        var site = given.site(given.customer());
        endingAt(site);
        var answer = list("site=" + site, before);
        assertThat(answer.at("/count").asInt()).isEqualTo(listed);
        var container = answer.at("/stops/0/containers/0");
        if (listed > 0) {
            assertThat(container.at("/status").asString()).isEqualTo("IN_DATE");
            assertThat(container.at("/jurisdiction").asString()).isEqualTo("US");
            assertThat(container.at("/lastDay").asString()).isEqualTo("2027-01-31");
            assertThat(container.at("/reason/code").asString()).isEqualTo("CONDEMNED");
            assertThat(container.at("/reason/text").asString()).startsWith("From 2027-02-01: ");
            assertThat(container.at("/reason/citation").isMissingNode()).isTrue();
        }
    }

    /** The same by visits: with it left at the stop, its life would end before the next. */
    @ParameterizedTest
    @CsvSource({"2027-01-31, 0", "2027-02-01, 1"})
    void listsOnARouteWhatIsAtTheEndOfItsServiceLifeBeforeTheNextVisit(LocalDate next, int listed) {
        var site = given.site(given.customer());
        endingAt(site);
        var route = routes.on(given.site(null), List.of(LocalDate.of(2027, 1, 28), next), site);
        var list = routes.list(route, "2027-01-28");
        assertThat(list.at("/count").asInt()).isEqualTo(listed);
        assertThat(list.at("/stops/0/containers/0/reason/text").asString(""))
                .startsWith(listed == 0 ? "" : "From 2027-02-01: ");
    }

    @Test
    void listsItAsCondemnedFromThatDayOnThoughItWasNotAssessedAnew() {
        var site = given.site(given.customer());
        endingAt(site);
        clock.set(LocalDate.of(2027, 2, 1));
        assertThat(list("site=" + site, "2027-02-01").text("/stops/0/containers/0/status")).isEqualTo("CONDEMNED");
    }

    /** Tested lately: the three years of that test are longer than what is left of the life. */
    private void endingAt(UUID site) {
        var body = Given.cylinder();
        body.put("specification", "DOT-3HT1850");
        body.put("manufactured", "2003-01");
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        var test = Requalification.passed(YearMonth.of(2025, 8), Method.VOLUMETRIC_EXPANSION, Rin.parse("A123"));
        requalifications.append(new RequalificationEntry(id, test, null, null), new Caller(UUID.randomUUID(), "yard",
                Set.of(Role.YARD), CustomerScope.EVERYONE));
    }
}
