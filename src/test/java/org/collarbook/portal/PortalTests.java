package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;

import tools.jackson.databind.JsonNode;

@RegisterTest
class PortalTests {

    private final Api api;
    private final Given given;
    private final TestClock clock;

    PortalTests(Api api, Given given, TestClock clock) {
        this.api = api;
        this.given = given;
        this.clock = clock;
    }

    private UUID cylinderOf(UUID customer) {
        var id = given.registered();
        given.moved(id, given.site(customer), "2026-11-20T09:00:00Z");
        return id;
    }

    private static String path(UUID customer) {
        return "/api/portal/containers?customer=" + customer;
    }

    @Test
    void tellsStatusDueMonthAndEveryReason() {
        var customer = given.customer();
        var id = cylinderOf(customer);
        var page = api.asPortalOf(new CustomerId(customer)).get(path(customer)).expect(200);
        assertThat(page.text("/items/0/id")).isEqualTo(id.toString());
        assertThat(page.text("/items/0/status")).isEqualTo("OVERDUE");
        assertThat(page.text("/items/0/due")).isEqualTo("2016-05");
        assertThat(page.at("/items/0/mayFill").asBoolean()).isFalse();
        assertThat(page.at("/items/0/reasons")).isNotEmpty()
                .allSatisfy(reason -> assertThat(reason.at("/text").asString()).isNotBlank());
        assertThat(page.header("Cache-Control")).contains("private");
    }

    @Test
    void answersNotModifiedUntilSomethingChanges() {
        var customer = given.customer();
        cylinderOf(customer);
        var portal = api.asPortalOf(new CustomerId(customer));
        var first = portal.get(path(customer)).expect(200);
        assertThat(first.etag()).matches("\"[0-9a-f]{32}\"");
        var same = portal.with("If-None-Match", first.etag()).get(path(customer)).expect(304);
        assertThat(same.bytes()).isEmpty();
        assertThat(same.header("Since-Token")).isNotBlank();
        cylinderOf(customer);
        var second = portal.with("If-None-Match", first.etag()).get(path(customer)).expect(200);
        assertThat(second.at("/items")).hasSize(2);
        assertThat(second.etag()).isNotEqualTo(first.etag());
    }

    @Test
    void statusFollowsTheDateWithoutAnybodyTouchingTheRegister() {
        var customer = given.customer();
        var body = Given.cylinder();
        body.put("manufactured", "2014-11");
        given.moved(given.registered(body), given.site(customer), "2026-11-20T09:00:00Z");
        var portal = api.asPortalOf(new CustomerId(customer));
        assertThat(portal.get(path(customer)).text("/items/0/status")).isEqualTo("DUE_THIS_MONTH");
        // the site is in Chicago: six hours behind UTC in winter
        clock.set(Instant.parse("2026-12-01T05:59:59Z"));
        assertThat(portal.get(path(customer)).text("/items/0/status")).isEqualTo("DUE_THIS_MONTH");
        clock.set(Instant.parse("2026-12-01T06:00:00Z"));
        assertThat(portal.get(path(customer)).text("/items/0/status")).isEqualTo("OVERDUE");
    }

    @Test
    void anotherCustomersListDoesNotExist() {
        var mine = given.customer();
        var theirs = given.customer();
        cylinderOf(theirs);
        var portal = api.asPortalOf(new CustomerId(mine));
        var foreign = portal.get(path(theirs)).expectProblem(404, "NOT_FOUND");
        var nobody = portal.get(path(UUID.randomUUID())).expectProblem(404, "NOT_FOUND");
        assertThat(foreign.body()).isEqualTo(nobody.body());
        portal.get("/api/containers").expectProblem(403, "FORBIDDEN");
        portal.get("/api/customers/" + theirs).expectProblem(403, "FORBIDDEN");
        portal.get("/api/customers/" + mine + "/containers").expectProblem(403, "FORBIDDEN");
    }

    @Test
    void aKeyForSomeSitesSeesWhatStandsThere() {
        var customer = given.customer();
        var north = given.site(customer);
        var id = given.registered();
        given.moved(id, north, "2026-11-20T09:00:00Z");
        cylinderOf(customer);
        var key = api.as(Role.ADMINISTRATOR).post("/api/keys", Map.of("name", "north", "roles", List.of("portal"),
                "customerId", customer, "sites", List.of(north))).expect(201).text("/key");
        var page = api.withKey(key).get(path(customer)).expect(200);
        assertThat(page.at("/items")).hasSize(1);
        assertThat(page.text("/items/0/id")).isEqualTo(id.toString());
        assertThat(api.asPortalOf(new CustomerId(customer)).get(path(customer)).at("/items")).hasSize(2);
        given.moved(id, given.site(customer), "2026-11-21T09:00:00Z");
        assertThat(api.withKey(key).get(path(customer)).expect(200).at("/items")).isEmpty();
    }

    /** What stands on a container is judged the same whoever reads it: nothing that counts is hidden by the view. */
    @Test
    void aPortalIsToldWhatTheStaffIsTold() {
        var customer = given.customer();
        var id = cylinderOf(customer);
        var yard = api.as(Role.YARD);
        var hold = yard.post("/api/containers/" + id + "/holds", Map.of("reason", "DENTED")).expect(201);
        assertThat(hold.text("/outcome")).isEqualTo("HELD");
        yard.post("/api/containers/" + id + "/parts", Map.of("kind", "RELIEF_VALVE", "manufactured", "2026-05",
                "fittedOn", "2026-11-01"))
                .expect(201);
        var staff = api.as(Role.CLERK).get("/api/containers/" + id + "/assessment").expect(200);
        var item = api.asPortalOf(new CustomerId(customer)).get(path(customer)).expect(200).at("/items/0");
        assertThat(item.at("/status").asString()).isEqualTo(staff.text("/status")).isEqualTo("ON_HOLD");
        assertThat(codes(item.at("/reasons"))).isEqualTo(codes(staff.at("/reasons"))).contains("ON_HOLD");
    }

    private static List<String> codes(JsonNode reasons) {
        var codes = new ArrayList<String>();
        reasons.forEach(reason -> codes.add(reason.at("/code").asString()));
        return codes;
    }

    @Test
    void pagesCoverEveryContainerOnce() {
        var customer = given.customer();
        var site = given.site(customer);
        var expected = new HashSet<String>();
        for (int i = 0; i < 7; i++) {
            var id = given.registered();
            given.moved(id, site, "2026-11-20T09:00:00Z");
            expected.add(id.toString());
        }
        var portal = api.asPortalOf(new CustomerId(customer));
        var seen = new ArrayList<String>();
        var next = "";
        do {
            var page = portal.get(path(customer) + "&size=3&cursor=" + next).expect(200);
            page.at("/items").forEach(item -> seen.add(item.at("/id").asString()));
            next = page.json().path("next").asString("");
        } while (!next.isEmpty());
        assertThat(seen).doesNotHaveDuplicates().containsExactlyInAnyOrderElementsOf(expected);
    }

    @Test
    void absurdPagesAndForgedCursorsAreRefused() {
        var path = path(given.customer());
        var clerk = api.as(Role.CLERK);
        for (var query : new String[]{"&size=0", "&size=1001", "&size=many", "&cursor=!!", "&cursor=bm90LWFuLWlk"}) {
            clerk.get(path + query).expectProblem(400, "INVALID_INPUT");
        }
    }
}
