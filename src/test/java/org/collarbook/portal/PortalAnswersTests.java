package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.collarbook.intake.Ledger;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;

/** What a customer's web site is told, and what it is not. */
@RegisterTest
class PortalAnswersTests {

    private static final String LIST = "/api/portal/containers";

    private final Api api;
    private final Given given;
    private final TestClock clock;

    PortalAnswersTests(Api api, Given given, TestClock clock) {
        this.api = api;
        this.given = given;
        this.clock = clock;
    }

    private Api.Session portal(UUID customer) {
        return api.asPortalOf(new CustomerId(customer));
    }

    private UUID made(String month, UUID site) {
        var body = Given.cylinder();
        body.put("manufactured", month);
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    private UUID tankAt(UUID site) {
        var id = given.registered(PortalTank.body());
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    private void gauged(UUID tank, int percent, String at) {
        api.as(Role.FILLER).post("/api/readings", Map.of("containerId", tank, "percent", percent, "takenAt", at,
                "source", "TELEMETRY")).expect(201);
    }

    private void filled(UUID cylinder, String at) {
        api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills",
                Map.of("containerId", cylinder, "filledAt", at, "specificGravity", 0.508, "lookedAt", true,
                        "netAfterLb", 19))
                .expect(201);
    }

    @Test
    void tellsWhatACustomerAsks() {
        var customer = given.customer();
        var site = given.site(customer);
        var id = made("2020-06", site);
        filled(id, "2026-11-24T09:00:00Z");
        var read = portal(customer).get(LIST + "/" + id).expect(200);
        assertThat(read.text("/container/status")).isEqualTo("IN_DATE");
        assertThat(read.text("/container/meaning")).isEqualTo("Its inspection is not due before next month.");
        assertThat(read.text("/container/due")).isEqualTo("2032-06");
        assertThat(read.text("/container/lastDay")).isEqualTo("2032-06-30");
        assertThat(read.text("/container/size")).isEqualTo("20 lb");
        assertThat(read.text("/container/service/word")).isEqualTo("IN_SERVICE");
        assertThat(read.text("/container/site/id")).isEqualTo(site.toString());
        assertThat(read.text("/container/lastFill/day")).isEqualTo("2026-11-24");
        assertThat(read.text("/container/lastFill/net")).isEqualTo("19 lb");
        assertThat(read.text("/caution")).contains("Look at the container");
        assertThat(read.header("Cache-Control")).isEqualTo("no-cache, private");
        assertThat(read.at("/container/lastReading").isMissingNode()).isTrue();
    }

    @Test
    void tellsTheLastRequalificationWithItsMethodAndRin() {
        var serial = Given.serial();
        new Ledger().row("serial", serial, "manufactured", "5-04", "last_test_mark", "5-21E", "rin", "A123").load(api,
                Ledger.declaration());
        var id = UUID.fromString(api.as(Role.CLERK).get("/api/containers?serial=" + serial).expect(200)
                .text("/items/0/id"));
        var customer = given.customer();
        given.moved(id, given.site(customer), "2026-11-24T09:00:00Z");
        var last = portal(customer).get(LIST + "/" + id).expect(200).at("/container/lastRequalification");
        assertThat(last.at("/month").asString()).isEqualTo("2021-05");
        assertThat(last.at("/method").asString()).isEqualTo("EXTERNAL_VISUAL");
        assertThat(last.at("/rin").asString()).isEqualTo("A123");
    }

    @Test
    void aHoldIsToldByItsReasonWithoutTheNote() {
        var customer = given.customer();
        var id = made("2020-06", given.site(customer));
        api.as(Role.YARD).post("/api/containers/" + id + "/holds",
                Map.of("reason", "LEAKING", "note", "dropped by M. Holt")).expect(201);
        var read = portal(customer).get(LIST + "/" + id).expect(200);
        assertThat(read.text("/container/service/word")).isEqualTo("OUT_OF_SERVICE");
        assertThat(read.at("/container/service/why")).singleElement()
                .satisfies(why -> assertThat(why.asString()).isEqualTo("It leaks."));
        assertThat(read.body()).doesNotContain("Holt").doesNotContain("A hold stands");
    }

    @Test
    void whyATankWasStoppedStaysWithTheStaff() {
        var customer = given.customer();
        var tank = tankAt(given.site(customer));
        api.as(Role.YARD).post("/api/containers/" + tank + "/out-of-service",
                Map.of("since", "2026-11-22", "reason", "quarrel over the bill")).expect(201);
        var read = portal(customer).get(LIST + "/" + tank).expect(200);
        assertThat(read.at("/container/service/why/0").asString())
                .isEqualTo("It was taken out of service on 2026-11-22.");
        assertThat(read.body()).doesNotContain("quarrel");
    }

    /** Nor how much was put in there. */
    @Test
    void whatTheGaugeShowedAtAnotherCustomersIsNotTold() {
        var before = given.customer();
        var there = given.site(before);
        var tank = tankAt(there);
        gauged(tank, 71, "2026-11-21T09:00:00Z");
        var cylinder = made("2020-06", there);
        filled(cylinder, "2026-11-21T09:00:00Z");
        var now = given.customer();
        var here = given.site(now);
        given.moved(tank, here, "2026-11-22T09:00:00Z");
        given.moved(cylinder, here, "2026-11-22T09:00:00Z");
        assertThat(portal(now).get(LIST + "/" + tank).expect(200).at("/container/lastReading").isMissingNode())
                .isTrue();
        var fill = portal(now).get(LIST + "/" + cylinder).expect(200).at("/container/lastFill");
        assertThat(fill.at("/day").asString()).isEqualTo("2026-11-21");
        assertThat(fill.at("/net").isMissingNode()).isTrue();
        gauged(tank, 68, "2026-11-23T09:00:00Z");
        var read = portal(now).get(LIST + "/" + tank).expect(200);
        assertThat(read.at("/container/lastReading/percent").asInt()).isEqualTo(68);
        assertThat(read.at("/container/lastReading/ageDays").asInt()).isEqualTo(2);
        assertThat(read.text("/container/lastReading/source")).isEqualTo("TELEMETRY");
        assertThat(read.text("/container/lastReading/takenAt")).isEqualTo("2026-11-23T09:00:00Z");
        portal(before).get(LIST + "/" + tank).expectProblem(404, "NOT_FOUND");
    }

    @Test
    void foreignIdsAnswerLikeUnknownOnes() {
        var mine = given.customer();
        var site = given.site(given.customer());
        var theirs = made("2020-06", site);
        var portal = portal(mine);
        assertThat(portal.get(LIST + "/" + theirs).expectProblem(404, "NOT_FOUND").body())
                .isEqualTo(portal.get(LIST + "/" + UUID.randomUUID()).expectProblem(404, "NOT_FOUND").body());
        assertThat(portal.get("/api/portal/sites/" + site).expectProblem(404, "NOT_FOUND").body()).isEqualTo(
                portal.get("/api/portal/sites/" + UUID.randomUUID()).expectProblem(404, "NOT_FOUND").body());
        assertThat(portal.get(LIST + "?site=" + site).expectProblem(400, "INVALID_INPUT").errors())
                .isEqualTo(Map.of("site", "UNKNOWN_SITE"));
    }

    @Test
    void theStaffNamesTheCustomer() {
        var customer = given.customer();
        var id = made("2020-06", given.site(customer));
        var clerk = api.as(Role.CLERK);
        for (var path : List.of(LIST, LIST + "/" + id, "/api/portal/sites")) {
            assertThat(clerk.get(path).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("customer", "MISSING"));
        }
        assertThat(clerk.get(LIST + "?customer=" + customer).expect(200).bytes())
                .isEqualTo(portal(customer).get(LIST).expect(200).bytes())
                .isEqualTo(clerk.get("/api/customers/" + customer + "/containers").expect(200).bytes());
        clerk.get(LIST + "?customer=" + UUID.randomUUID()).expectProblem(404, "NOT_FOUND");
        api.as(Role.FILLER).get(LIST + "?customer=" + customer).expectProblem(403, "FORBIDDEN");
    }

    @Test
    void filtersBySiteStatusAndDueMonth() {
        var customer = given.customer();
        var north = given.site(customer);
        var south = given.site(customer);
        var fresh = made("2020-06", north);
        var old = made("2004-05", south);
        var portal = portal(customer);
        for (var asked : Map.of("?site=" + north, fresh, "?status=OVERDUE", old, "?status=in_date&site=" + north, fresh,
                "?dueFrom=2032-06", fresh, "?dueTo=2032-05", old, "?dueFrom=2032-06&dueTo=2032-06", fresh).entrySet()) {
            var page = portal.get(LIST + asked.getKey()).expect(200);
            assertThat(page.at("/items").findValuesAsString("serial")).as(asked.getKey()).hasSize(1);
            assertThat(page.text("/items/0/id")).as(asked.getKey()).isEqualTo(asked.getValue().toString());
        }
        assertThat(portal.get(LIST + "?status=OVERDUE&site=" + north).expect(200).at("/items")).isEmpty();
        assertThat(portal.get(LIST + "?status=fine&dueFrom=June&dueTo=2026-13&state=x&size=0&cursor=!!&fields=id,key")
                .expectProblem(400, "INVALID_INPUT").errors()).isEqualTo(
                        Map.of("status", "UNKNOWN_WORD", "dueFrom", "INVALID_MONTH", "dueTo", "INVALID_MONTH", "state",
                                "UNKNOWN_PARAMETER", "size", "OUT_OF_RANGE", "cursor", "INVALID_CURSOR", "fields",
                                "UNKNOWN_FIELD"));
    }

    @Test
    void givesTheFieldsAskedFor() {
        var customer = given.customer();
        var id = made("2020-06", given.site(customer));
        var portal = portal(customer);
        assertThat(portal.get(LIST + "?fields=status,due").expect(200).at("/items/0").propertyNames())
                .containsExactlyInAnyOrder("id", "status", "due");
        assertThat(portal.get(LIST + "/" + id + "?fields=id,serial").expect(200).at("/container").propertyNames())
                .containsExactlyInAnyOrder("id", "serial");
        var refused = portal.get(LIST + "?fields=id,note").expectProblem(400, "INVALID_INPUT");
        assertThat(refused.text("/errors/0/accepted")).contains("lastRequalification", "lastReading");
    }

    @Test
    void pagesAreLinked() {
        var customer = given.customer();
        var site = given.site(customer);
        for (int i = 0; i < 5; i++) {
            made("2020-06", site);
        }
        var portal = portal(customer);
        var first = portal.get(LIST + "?size=2&fields=id").expect(200);
        assertThat(first.headers().allValues("Link")).hasSize(2)
                .contains("<" + LIST + "?size=2&fields=id>; rel=\"first\"");
        var seen = new HashSet<String>();
        var pages = 0;
        for (String next = LIST + "?size=2&fields=id"; next != null; pages++) {
            var page = portal.get(next).expect(200);
            seen.addAll(page.at("/items").findValuesAsString("id"));
            next = PortalCopy.next(page);
        }
        assertThat(seen).hasSize(5);
        assertThat(pages).isEqualTo(3);
    }

    @Test
    void countsTheContainersOfASite() {
        var customer = given.customer();
        var site = given.site(customer);
        var other = given.site(customer);
        made("2020-06", site);
        made("2020-06", site);
        made("2004-05", site);
        var portal = portal(customer);
        var one = portal.get("/api/portal/sites/" + site).expect(200);
        assertThat(one.at("/containers").asInt()).isEqualTo(3);
        assertThat(one.at("/byStatus").toString()).isEqualTo("{\"OVERDUE\":1,\"IN_DATE\":2}");
        var page = portal.get("/api/portal/sites?size=1").expect(200);
        var rest = portal.get(PortalCopy.next(page)).expect(200);
        assertThat(List.of(page.text("/items/0/id"), rest.text("/items/0/id")))
                .containsExactlyInAnyOrder(site.toString(), other.toString());
        assertThat(PortalCopy.next(rest)).isNull();
        portal.with("If-None-Match", one.etag()).get("/api/portal/sites/" + site).expect(304);
        portal.get("/api/portal/sites?status=OVERDUE").expectProblem(400, "INVALID_INPUT");
    }

    @Test
    void answersNotModifiedByTagAndByDate() {
        var customer = given.customer();
        var tank = tankAt(given.site(customer));
        clock.set(Instant.parse("2026-11-25T12:30:00Z"));
        var portal = portal(customer);
        var one = LIST + "/" + tank;
        var read = portal.get(one).expect(200);
        var date = read.header("Last-Modified");
        assertThat(date).isNotBlank();
        var byDate = portal.with("If-Modified-Since", date);
        assertThat(byDate.get(one).expect(304).etag()).isEqualTo(read.etag());
        portal.with("If-None-Match", read.etag()).get(one).expect(304);
        // the tag is asked first (RFC 9110, section 13.2.2)
        byDate.with("If-None-Match", "\"another\"").get(one).expect(200);
        portal.with("If-Modified-Since", "Wed, 25 Nov 2020 12:00:00 GMT").with("If-None-Match", read.etag()).get(one)
                .expect(304);
        gauged(tank, 50, "2026-11-25T12:10:00Z");
        clock.set(Instant.parse("2026-11-25T12:40:00Z"));
        var changed = byDate.get(one).expect(200);
        assertThat(changed.header("Last-Modified")).isNotEqualTo(date);
        portal.with("If-Modified-Since", changed.header("Last-Modified")).get(one).expect(304);
        // another day has begun in Chicago
        clock.set(Instant.parse("2026-11-26T07:00:00Z"));
        assertThat(portal.with("If-Modified-Since", changed.header("Last-Modified")).get(one).expect(200)
                .header("Last-Modified")).isEqualTo("Thu, 26 Nov 2026 06:00:00 GMT");
        assertThat(portal.get(LIST).expect(200).header("Last-Modified")).isEmpty();
    }
}
