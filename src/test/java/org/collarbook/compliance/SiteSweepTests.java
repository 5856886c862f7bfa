package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.TimeUnit;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.custody.Movements;
import org.collarbook.custody.NewMovement;
import org.collarbook.holds.HoldReason;
import org.collarbook.holds.Holds;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.collarbook.testing.UnderWay;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** A site passes to another customer while somebody is at what stands there, or is bringing something. */
@RegisterTest
class SiteSweepTests {

    private static final Caller CALLER = new Caller(UUID.randomUUID(), "yard", Set.of(Role.YARD),
            CustomerScope.EVERYONE);

    private final Api api;
    private final Given given;
    private final SiteSweep sweep;
    private final Movements movements;
    private final Holds holds;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final TestClock clock;

    SiteSweepTests(Api api, Given given, SiteSweep sweep, Movements movements, Holds holds, JdbcClient jdbc,
            TransactionTemplate transaction, TestClock clock) {
        this.api = api;
        this.given = given;
        this.sweep = sweep;
        this.movements = movements;
        this.holds = holds;
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.clock = clock;
    }

    private void passes(UUID site, UUID customer, String jurisdiction) {
        var read = api.as(Role.CLERK).get("/api/sites/" + site).expect(200);
        var body = new LinkedHashMap<String, @Nullable Object>(Map.of("code", read.text("/code"), "name",
                "passed on", "kind", "CUSTOMER", "zone", "America/Chicago", "jurisdiction", jurisdiction));
        body.put("customerId", customer);
        api.as(Role.CLERK).ifMatch(read).put("/api/sites/" + site, body).expect(200);
    }

    private String stored(UUID container) {
        return jdbc.sql("""
                select customer_id || ' ' || standing || ' ' || jurisdiction from requirement
                where container_id = ? and decisive""").param(container).query(String.class).single();
    }

    private boolean isOver(UUID site) {
        return jdbc.sql("select not exists (select from site_sweep where site_id = ?)").param(site)
                .query(Boolean.class).single();
    }

    /** Whoever names the site in a fact holds it by its foreign key, and the change begins after that is committed. */
    @Test
    void whatIsJustBeingBroughtThereIsWaitedFor() throws Exception {
        var customer = given.customer();
        var site = given.site(given.customer());
        var there = given.registered();
        given.moved(there, site, "2026-11-20T09:00:00Z");
        var id = given.registered();
        try (var move = new UnderWay(transaction, jdbc, () -> movements
                .record(new NewMovement(id, site, Instant.parse("2026-11-21T09:00:00Z"), null), CALLER))) {
            var passing = move.meets(() -> passes(site, customer, "CA-ON"));
            assertThat(passing.isDone()).isFalse();
            move.commit();
            passing.get(30, TimeUnit.SECONDS);
        }
        assertThat(stored(there)).isEqualTo(customer + " UNDETERMINED CA");
        assertThat(stored(id)).isEqualTo(customer + " UNDETERMINED CA");
    }

    @Test
    void whatIsHeldByAnotherFollowsAndKeepsItsFact() throws Exception {
        var customer = given.customer();
        var site = given.site(given.customer());
        var id = given.registered();
        given.moved(id, site, "2026-11-20T09:00:00Z");
        try (var hold = new UnderWay(transaction, jdbc,
                () -> holds.place(id, HoldReason.DENTED, null, clock.instant().minusSeconds(60), CALLER))) {
            var passing = hold.meets(() -> passes(site, customer, "US"));
            assertThat(passing.isDone()).as("nobody is waited for").isTrue();
            passing.get(30, TimeUnit.SECONDS);
            sweep.run();
            assertThat(isOver(site)).isFalse();
            hold.commit();
        }
        untilOver(site);
        assertThat(stored(id)).isEqualTo(customer + " ON_HOLD US");
    }

    @Test
    void whatWasJudgedSinceIsLeftAlone() throws Exception {
        var site = given.site(given.customer());
        var id = given.registered();
        given.moved(id, site, "2026-11-20T09:00:00Z");
        passes(site, given.customer(), "US");
        var judged = changedBy(id);
        untilOver(site);
        assertThat(changedBy(id)).isEqualTo(judged);
    }

    /** A reading marks the row as changed, and judges nothing. */
    @Test
    void whatIsGaugedAfterwardsIsNotTakenForJudged() throws Exception {
        var customer = given.customer();
        var site = given.site(customer);
        var id = tank(site);
        try (var hold = new UnderWay(transaction, jdbc,
                () -> holds.place(id, HoldReason.DENTED, null, clock.instant().minusSeconds(60), CALLER))) {
            hold.meets(() -> passes(site, customer, "CA-ON")).get(30, TimeUnit.SECONDS);
            sweep.run();
            hold.commit();
        }
        assertThat(stored(id)).as("by the site as it was").isEqualTo(customer + " ON_HOLD US");
        api.as(Role.FILLER).post("/api/readings", Map.of("containerId", id, "percent", 60, "takenAt",
                "2026-11-25T08:00:00Z", "source", "READ_BY_PERSON")).expect(201);
        untilOver(site);
        assertThat(stored(id)).isEqualTo(customer + " ON_HOLD CA-ON");
    }

    /** The last round is made again as long as somebody was at one of them. */
    @Test
    void isNotOverWhileOneOfThemIsHeld() throws Exception {
        var site = given.site(given.customer());
        var id = given.registered();
        given.moved(id, site, "2026-11-20T09:00:00Z");
        passes(site, given.customer(), "US");
        jdbc.sql("update site_sweep set unseen_below = '1' where site_id = ?").param(site).update();
        jdbc.sql("update requirement set changed_by = '9223372036854775806' where container_id = ?").param(id).update();
        try (var held = new UnderWay(transaction, jdbc, () -> jdbc
                .sql("select 1 from journal_head where container_id = ? for update").param(id).query().singleRow())) {
            sweep.run();
            assertThat(isOver(site)).isFalse();
            held.commit();
        }
        untilOver(site);
        assertThat(changedBy(id)).isNotEqualTo("9223372036854775806");
    }

    @Test
    void oneThatFailsDoesNotKeepTheOthersWaiting() throws Exception {
        var broken = given.site(given.customer());
        var site = given.site(given.customer());
        for (var one : new UUID[]{broken, site}) {
            var id = given.registered();
            given.moved(id, one, "2026-11-20T09:00:00Z");
            passes(one, given.customer(), "US");
            jdbc.sql("update requirement set changed_by = '0' where container_id = ?").param(id).update();
        }
        jdbc.sql("update site set zone = 'Nowhere' where id = ?").param(broken).update();
        try {
            untilOver(site);
            assertThat(isOver(broken)).isFalse();
        } finally {
            jdbc.sql("update site set zone = 'America/Chicago' where id = ?").param(broken).update();
        }
        untilOver(broken);
    }

    /** Whatever else is under way on this server may not have seen the change. */
    private void untilOver(UUID site) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
        for (sweep.run(); !isOver(site); sweep.run()) {
            assertThat(System.nanoTime()).as("not over").isLessThan(end);
            Thread.sleep(50);
        }
    }

    private UUID tank(UUID site) {
        var body = Given.cylinder();
        body.put("kind", "STATIONARY_TANK");
        body.put("specification", "ASME");
        body.put("waterCapacity", "500 gal");
        body.put("servicePressure", 250);
        body.remove("tare");
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    private String changedBy(UUID id) {
        return jdbc.sql("select changed_by::text from requirement where container_id = ?").param(id)
                .query(String.class).single();
    }
}
