package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.custody.GaugeReadings;
import org.collarbook.custody.ReadingSource;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.transaction.support.TransactionTemplate;

/** A portal that keeps a copy learns all that changed, and no more. */
@RegisterTest
class PortalChangesTests {

    private final Api api;
    private final Given given;
    private final TestClock clock;
    private final GaugeReadings readings;
    private final TransactionTemplate transaction;

    PortalChangesTests(Api api, Given given, TestClock clock, GaugeReadings readings,
            TransactionTemplate transaction) {
        this.api = api;
        this.given = given;
        this.clock = clock;
        this.readings = readings;
        this.transaction = transaction;
    }

    private UUID at(UUID site) {
        var id = given.registered();
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    private UUID tankAt(UUID site) {
        var id = given.registered(PortalTank.body());
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    private Api.Session portal(UUID customer) {
        return api.asPortalOf(new CustomerId(customer));
    }

    @Test
    void tellsWhatIsNewWhatChangedAndWhatIsGone() {
        var customer = given.customer();
        var site = given.site(customer);
        var stays = at(site);
        var changes = at(site);
        var goes = at(site);
        var copy = PortalCopy.whole(portal(customer), 2);
        assertThat(copy.containers()).containsOnlyKeys(stays.toString(), changes.toString(), goes.toString());

        api.as(Role.YARD).post("/api/containers/" + changes + "/holds", Map.of("reason", "LEAKING")).expect(201);
        given.moved(goes, given.site(null), "2026-11-22T09:00:00Z");
        var comes = at(site);
        var told = copy.follow(2);
        assertThat(told.changed()).containsExactlyInAnyOrder(changes.toString(), comes.toString());
        assertThat(told.removed()).containsExactly(goes.toString());
        assertThat(copy.containers().get(changes.toString()).at("/status").asString()).isEqualTo("ON_HOLD");
        assertThat(copy.containers()).isEqualTo(PortalCopy.whole(portal(customer), 100).containers());
        assertThat(copy.follow(2)).isEqualTo(new PortalCopy.Told(Set.of(), Set.of()));
    }

    @Test
    void whereItWentIsNotTold() {
        var customer = given.customer();
        var goes = at(given.site(customer));
        var copy = PortalCopy.whole(portal(customer), 100);
        var elsewhere = given.customer();
        given.moved(goes, given.site(elsewhere), "2026-11-22T09:00:00Z");
        var page = portal(customer).get("/api/portal/containers?since=" + copy.token()).expect(200);
        assertThat(page.at("/items")).isEmpty();
        assertThat(page.at("/removed")).singleElement()
                .satisfies(id -> assertThat(id.asString()).isEqualTo(goes.toString()));
        assertThat(page.json().propertyNames()).containsExactlyInAnyOrder("items", "removed", "caution");
    }

    /** A reading and the amount of a fill are whose the site was when they were told; a site that changes hands moves neither. */
    @Test
    void aSiteThatChangesHandsTakesNothingToldThereAlong() {
        var mine = given.customer();
        var theirs = given.customer();
        var home = given.site(mine);
        var away = given.site(theirs);
        var tank = tankAt(away);
        var clerk = api.as(Role.CLERK);
        clerk.post("/api/readings", Map.of("containerId", tank, "percent", 77, "takenAt", "2026-11-21T06:00:00Z",
                "source", "TELEMETRY")).expect(201);
        given.moved(tank, home, "2026-11-22T09:00:00Z");
        var own = tankAt(home);
        clerk.post("/api/readings", Map.of("containerId", own, "percent", 41, "takenAt", "2026-11-21T06:00:00Z",
                "source", "TELEMETRY")).expect(201);
        var copy = PortalCopy.whole(portal(mine), 100);
        assertThat(copy.containers().get(own.toString()).at("/lastReading/percent").asInt()).isEqualTo(41);
        assertThat(copy.containers().get(tank.toString()).has("lastReading")).isFalse();

        clock.set(clock.instant().plusSeconds(60));
        belongsTo(away, mine);
        copy.follow(100);
        var whole = PortalCopy.whole(portal(mine), 100).containers();
        assertThat(copy.containers()).isEqualTo(whole);
        assertThat(whole.get(tank.toString()).has("lastReading")).as("it was theirs when it was told").isFalse();

        given.moved(own, away, "2026-11-23T09:00:00Z");
        copy.follow(100);
        clock.set(clock.instant().plusSeconds(60));
        belongsTo(home, theirs);
        copy.follow(100);
        whole = PortalCopy.whole(portal(mine), 100).containers();
        assertThat(copy.containers()).isEqualTo(whole);
        assertThat(whole.get(own.toString()).at("/lastReading/percent").asInt()).as("it was ours").isEqualTo(41);
    }

    private void belongsTo(UUID site, UUID customer) {
        var clerk = api.as(Role.CLERK);
        var read = clerk.get("/api/sites/" + site).expect(200);
        var body = Given.depot();
        body.put("code", read.text("/code"));
        body.put("kind", "CUSTOMER");
        body.put("customerId", customer);
        clerk.ifMatch(read).put("/api/sites/" + site, body).expect(200);
    }

    @Test
    void oneThatWasMergedIntoAnotherIsGone() {
        var customer = given.customer();
        var site = given.site(customer);
        var kept = at(site);
        var closed = at(site);
        var copy = PortalCopy.whole(portal(customer), 100);
        var clerk = api.as(Role.CLERK);
        clerk.ifMatch(clerk.get("/api/containers/" + kept).expect(200)).post("/api/containers/" + kept + "/merges",
                Map.of("absorbed", closed, "setAside", List.of("serial"), "fillWillBeAllowed", true, "reason",
                        "registered twice"))
                .expect(201);
        assertThat(copy.follow(100).removed()).containsExactly(closed.toString());
        assertThat(copy.containers()).isEqualTo(PortalCopy.whole(portal(customer), 100).containers());
    }

    /** Only the day changes: nobody touches the register. */
    @Test
    void whatFallsOverdueOvernightIsToldAlone() {
        var customer = given.customer();
        var site = given.site(customer);
        var body = Given.cylinder();
        body.put("manufactured", "2014-11");
        var falls = given.registered(body);
        given.moved(falls, site, "2026-11-20T09:00:00Z");
        at(site);
        clock.set(Instant.parse("2026-12-01T05:59:59Z"));
        var copy = PortalCopy.whole(portal(customer), 100);
        assertThat(copy.containers().get(falls.toString()).at("/status").asString()).isEqualTo("DUE_THIS_MONTH");
        // midnight in Chicago
        clock.set(Instant.parse("2026-12-01T06:00:00Z"));
        var told = copy.follow(1);
        assertThat(told.changed()).containsExactly(falls.toString());
        assertThat(told.removed()).isEmpty();
        assertThat(copy.containers().get(falls.toString()).at("/status").asString()).isEqualTo("OVERDUE");
        assertThat(copy.follow(1).changed()).isEmpty();
    }

    @Test
    void aReadingAndItsAgeAreChanges() {
        var customer = given.customer();
        var tank = tankAt(given.site(customer));
        var copy = PortalCopy.whole(portal(customer), 100);
        api.as(Role.FILLER).post("/api/readings", Map.of("containerId", tank, "percent", 62, "takenAt",
                "2026-11-25T08:00:00Z", "source", "TELEMETRY")).expect(201);
        assertThat(copy.follow(100).changed()).containsExactly(tank.toString());
        var item = copy.containers().get(tank.toString());
        assertThat(item.at("/lastReading/percent").asInt()).isEqualTo(62);
        assertThat(item.at("/lastReading/stale").asBoolean()).isFalse();
        clock.set(TestClock.TODAY.plusDays(7));
        assertThat(copy.follow(100).changed()).containsExactly(tank.toString());
        assertThat(copy.containers().get(tank.toString()).at("/lastReading/stale").asBoolean()).isFalse();
        clock.set(TestClock.TODAY.plusDays(8));
        copy.follow(100);
        assertThat(copy.containers().get(tank.toString()).at("/lastReading/stale").asBoolean()).isTrue();
        assertThat(copy.containers().get(tank.toString()).at("/lastReading/ageDays").asInt()).isEqualTo(8);
    }

    @Test
    void aSiteWithAnotherNameChangesAllThatStandsThere() {
        var customer = given.customer();
        var site = given.site(customer);
        var here = at(site);
        at(given.site(customer));
        var copy = PortalCopy.whole(portal(customer), 100);
        var clerk = api.as(Role.CLERK);
        var read = clerk.get("/api/sites/" + site).expect(200);
        var body = Given.depot();
        body.put("kind", "CUSTOMER");
        body.put("customerId", customer);
        body.put("name", "Upper yard");
        clerk.ifMatch(read).put("/api/sites/" + site, body).expect(200);
        assertThat(copy.follow(100).changed()).containsExactly(here.toString());
        assertThat(copy.containers().get(here.toString()).at("/site/name").asString()).isEqualTo("Upper yard");
    }

    @Test
    void aSiteThatIsAnotherCustomersTakesWhatStandsThereAlong() {
        var customer = given.customer();
        var site = given.site(customer);
        var here = at(site);
        var buyer = given.customer();
        var copy = PortalCopy.whole(portal(customer), 100);
        var theirs = PortalCopy.whole(portal(buyer), 100);
        var clerk = api.as(Role.CLERK);
        var body = Given.depot();
        body.put("kind", "CUSTOMER");
        body.put("customerId", buyer);
        clerk.ifMatch(clerk.get("/api/sites/" + site).expect(200)).put("/api/sites/" + site, body).expect(200);
        assertThat(copy.follow(100)).isEqualTo(new PortalCopy.Told(Set.of(), Set.of(here.toString())));
        assertThat(theirs.follow(100)).isEqualTo(new PortalCopy.Told(Set.of(here.toString()), Set.of()));
    }

    /** It began before the first answer and ends after the second: by number or time it would be older than both. */
    @Test
    void aTransactionThatEndsLateIsNotMissed() {
        var customer = given.customer();
        var site = given.site(customer);
        var late = tankAt(site);
        var quick = tankAt(site);
        var by = new Caller(UUID.randomUUID(), "test", Set.of(Role.FILLER), CustomerScope.EVERYONE);
        var at = Instant.parse("2026-11-25T08:00:00Z");
        var copy = PortalCopy.whole(portal(customer), 100);
        // its key is written now, not in the transaction that is open below
        var filler = api.as(Role.FILLER);
        transaction.executeWithoutResult(open -> {
            readings.record(late, new BigDecimal("40"), at, ReadingSource.TELEMETRY, by);
            assertThat(copy.follow(100).changed()).isEmpty();
            filler.post("/api/readings", Map.of("containerId", quick, "percent", 50, "takenAt", at,
                    "source", "TELEMETRY")).expect(201);
            assertThat(copy.follow(100).changed()).containsExactly(quick.toString());
        });
        assertThat(copy.follow(100).changed()).containsExactly(late.toString());
        assertThat(copy.containers().get(late.toString()).at("/lastReading/percent").asInt()).isEqualTo(40);
    }

    @Test
    void aTokenThatIsForgedOldOrSomebodyElsesSaysStartOver() {
        var customer = given.customer();
        var site = given.site(customer);
        at(site);
        var token = PortalCopy.whole(portal(customer), 100).token();
        var list = "/api/portal/containers?since=";
        for (var wrong : List.of("x", "bm90LW91cnM", token.substring(1), token + "A",
                (token.charAt(0) == 'A' ? "B" : "A") + token.substring(1), "%C3%A9")) {
            portal(customer).get(list + wrong).expectProblem(410, "START_OVER");
        }
        portal(given.customer()).get(list + token).expectProblem(410, "START_OVER");
        var north = api.as(Role.ADMINISTRATOR).post("/api/keys", Map.of("name", "north", "roles", List.of("portal"),
                "customerId", customer, "sites", List.of(site))).expect(201).text("/key");
        assertThat(api.withKey(north).get(list + token).expectProblem(410, "START_OVER").text("/detail"))
                .contains("without since");
        portal(customer).get(list + token).expect(200);
        clock.set(TestClock.TODAY.plusDays(31));
        portal(customer).get(list + token).expectProblem(410, "START_OVER");
    }

    @Test
    void filtersAreNotMixedWithIt() {
        var customer = given.customer();
        var token = PortalCopy.whole(portal(customer), 100).token();
        assertThat(portal(customer).get("/api/portal/containers?status=OVERDUE&since=" + token)
                .expectProblem(400, "INVALID_INPUT").errors()).containsEntry("since", "NOT_WITH_A_FILTER");
        assertThat(portal(customer).get("/api/portal/containers?status=OVERDUE").expect(200).header("Since-Token"))
                .isEmpty();
    }

    @Test
    void aKeyForSomeSitesIsToldThatItLeftThem() {
        var customer = given.customer();
        var north = given.site(customer);
        var id = at(north);
        var key = api.as(Role.ADMINISTRATOR).post("/api/keys", Map.of("name", "north", "roles", List.of("portal"),
                "customerId", customer, "sites", List.of(north))).expect(201).text("/key");
        var narrow = PortalCopy.whole(api.withKey(key), 100);
        var wide = PortalCopy.whole(portal(customer), 100);
        given.moved(id, given.site(customer), "2026-11-22T09:00:00Z");
        assertThat(narrow.follow(100)).isEqualTo(new PortalCopy.Told(Set.of(), Set.of(id.toString())));
        assertThat(wide.follow(100)).isEqualTo(new PortalCopy.Told(Set.of(id.toString()), Set.of()));
    }
}
