package org.collarbook.compliance.declarations;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What nobody has read or recorded is undetermined, until somebody answers for it by name. */
@RegisterTest
class DeclarationsTests {

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final TestClock clock;
    private final JdbcClient jdbc;
    private final DeclaredFleet fleet;

    DeclarationsTests(Api api, Given given, Tables tables, TestClock clock, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.clock = clock;
        this.jdbc = jdbc;
        this.fleet = new DeclaredFleet(api, given);
    }

    private Answer fillCheck(UUID container) {
        return api.as(Role.FILLER).get("/api/fill-check?specificGravity=0.504&serial="
                + fleet.container(container).text("/serial"));
    }

    private String stored(UUID container) {
        return jdbc.sql("select standing from requirement where container_id = ? and decisive").param(container)
                .query(String.class).single();
    }

    private void anHourLater() {
        clock.set(clock.instant().plus(Duration.ofHours(1)));
    }

    /** 49 CFR 180.209(g) asks for a coat or the like, and 180.209(e) for service and freedom from corrosion. */
    @Test
    void undeterminedThenDeclaredThenWithdrawn() {
        var site = given.site(null);
        var unknown = fleet.cylinder("coated", null);
        given.moved(unknown, site, "2026-11-20T09:00:00Z");
        assertThat(fleet.status(unknown)).isEqualTo("UNDETERMINED");
        assertThat(fleet.assessment(unknown, "").at("/declared")).isEmpty();
        var before = clock.instant();
        anHourLater();

        var declared = fleet.declared(Map.of("coated", true));
        assertThat(declared.text("/declaration/state")).isEqualTo("APPLIED");
        assertThat(DeclaredFleet.counts(declared, "/counts")).isEqualTo("1/0/0");
        assertThat(declared.text("/facts/0/fact")).isEqualTo("coated");
        var now = fleet.assessment(unknown, "");
        assertThat(now.text("/status")).isEqualTo("IN_DATE");
        assertThat(now.text("/declared/0/by")).isEqualTo("the plant manager");
        assertThat(now.text("/declared/0/on")).isEqualTo("2026-11-20");
        assertThat(now.at("/declared/0/facts").toString()).isEqualTo("[\"coated\"]");
        assertThat(stored(unknown)).isEqualTo("DUE");
        var check = fillCheck(unknown).expect(200);
        assertThat(check.at("/mayFill").asBoolean()).as(check.body()).isTrue();
        assertThat(check.text("/declared/declaration")).isEqualTo(declared.text("/declaration/id"));
        var during = clock.instant();
        anHourLater();

        var withdrawn = fleet.withdrawn(declared.text("/declaration/id")).expect(200);
        assertThat(withdrawn.text("/declaration/state")).isEqualTo("WITHDRAWN");
        assertThat(withdrawn.text("/declaration/withdrawal/reason")).isEqualTo("another yard was meant");
        assertThat(withdrawn.at("/counts/resting").asInt()).isZero();
        assertThat(fleet.status(unknown)).isEqualTo("UNDETERMINED");
        assertThat(stored(unknown)).isEqualTo("UNDETERMINED");
        assertThat(fleet.container(unknown).at("/declared")).isEmpty();
        assertThat(fillCheck(unknown).at("/mayFill").asBoolean()).isFalse();

        assertThat(fleet.assessment(unknown, "?knownAt=" + before).text("/status")).isEqualTo("UNDETERMINED");
        var then = fleet.assessment(unknown, "?knownAt=" + during);
        assertThat(then.text("/status")).isEqualTo("IN_DATE");
        assertThat(then.text("/declared/0/facts/0")).isEqualTo("coated");
        assertThat(fleet.isWhole(unknown)).isTrue();
        var history = api.as(Role.CLERK).get("/api/containers/" + unknown + "/history").expect(200).body();
        assertThat(history).contains("Declaration " + declared.text("/declaration/id") + " by the plant manager")
                .contains("withdrawn: another yard was meant");
    }

    /** Made in June 2020: nobody can have said before what it is. Whose month nobody knows may be older. */
    @ParameterizedTest
    @CsvSource({"2020-05-31, 1, 2", "2020-06-01, 3, 0"})
    void aDeclarationSaysNothingOfWhatWasMadeAfterItsDay(String declaredOn, int filled, int untouched) {
        var later = fleet.cylinder("coated", null);
        fleet.cylinder("coated", false);
        var unknown = fleet.cylinder("coated", null, "manufactured", null);
        var body = fleet.declaration(Map.of("coated", true, "jurisdiction", "US"));
        body.put("declaredOn", declaredOn);
        var preview = api.as(Role.CLERK).post("/api/declarations/previews", body).expect(200);
        assertThat(preview.at("/untouched").asInt()).isEqualTo(untouched);
        assertThat(preview.at("/filled").asInt()).isEqualTo(filled);
        var declared = fleet.send("/api/declarations", body).expect(201);
        assertThat(declared.text("/declaration/state")).isEqualTo("APPLIED");
        assertThat(declared.at("/counts/containers").asInt()).isEqualTo(3);
        assertThat(declared.at("/counts/done").asInt()).isEqualTo(3);
        assertThat(declared.at("/counts/untouched").asInt()).isEqualTo(untouched);
        assertThat(DeclaredFleet.counts(declared, "/counts")).isEqualTo(DeclaredFleet.counts(preview, ""))
                .isEqualTo(untouched == 0 ? "3/0/1" : "1/0/0");
        assertThat(fleet.container(later).at("/coated").isBoolean()).isEqualTo(untouched == 0);
        assertThat(fleet.assessment(later, "").at("/declared").isEmpty()).isEqualTo(untouched > 0);
        assertThat(fleet.container(unknown).at("/coated").asBoolean()).isTrue();
    }

    @Test
    void whatIsKnownStaysAndIsTold() {
        var coated = fleet.cylinder("coated", true);
        var bare = fleet.cylinder("coated", false, "ownerConsent", null);
        var revision = fleet.container(bare).etag();
        var declared = fleet.declared(Map.of("coated", true));
        assertThat(DeclaredFleet.counts(declared, "/counts")).isEqualTo("0/1/1");
        assertThat(declared.text("/contradictions/items/0/container")).isEqualTo(bare.toString());
        assertThat(declared.text("/contradictions/items/0/facts/0")).isEqualTo("coated");
        assertThat(fleet.container(bare).at("/coated").asBoolean()).isFalse();
        assertThat(fleet.container(bare).etag()).isEqualTo(revision);
        assertThat(fleet.container(coated).at("/declared")).isEmpty();
        fleet.withdrawn(declared.text("/declaration/id")).expect(200);
        assertThat(fleet.container(coated).at("/coated").asBoolean()).isTrue();
    }

    /** Somebody looked at it since: what was read rests on no declaration any more. */
    @Test
    void whatIsReadLaterStaysWhenTheDeclarationIsWithdrawn() {
        var body = fleet.body("coated", null, "marksLegible", null);
        var container = fleet.registered(body);
        var declared = fleet.declared(Map.of("coated", true, "marksLegible", true));
        body.put("coated", false);
        body.put("marksLegible", true);
        body.put("reason", "read off the collar");
        var read = fleet.container(container);
        api.as(Role.CLERK).ifMatch(read).put("/api/containers/" + container, body).expect(200);
        assertThat(fleet.container(container).at("/declared").toString()).isEqualTo("[\"marks_legible\"]");
        fleet.withdrawn(declared.text("/declaration/id")).expect(200);
        var after = fleet.container(container);
        assertThat(after.json().path("coated").asString()).isEqualTo("false");
        assertThat(after.at("/marksLegible").isBoolean()).isFalse();
        assertThat(fleet.isWhole(container)).isTrue();
    }

    /** Each fact is told with its own declaration, and a withdrawal takes back its own alone. */
    @Test
    void severalDeclarationsOnOneContainer() {
        var container = fleet.cylinder("coated", null, "marksLegible", null, "service", null);
        var body = fleet.declaration(Map.of("lading", "LPG", "exclusive", true, "corrosionFree", true));
        body.put("declaredBy", "the fleet foreman");
        fleet.send("/api/declarations", body).expect(201);
        assertThat(fleet.status(container)).isEqualTo("UNDETERMINED");
        var second = fleet.declared(Map.of("coated", true, "jurisdiction", "US", "marksLegible", true, "exclusive",
                true));
        assertThat(DeclaredFleet.counts(second, "/counts")).isEqualTo("1/1/0");
        var answer = fleet.assessment(container, "");
        assertThat(answer.text("/status")).isEqualTo("IN_DATE");
        assertThat(answer.at("/declared").valueStream()
                .map(one -> one.at("/by").asString() + one.at("/facts").toString().replace("\"", "")))
                .containsExactly("the fleet foreman[lading,exclusive,corrosion_free]",
                        "the plant manager[coated,marks_legible,jurisdiction]");
        assertThat(fillCheck(container).text("/furtherDeclared/0/by")).isEqualTo("the plant manager");

        fleet.withdrawn(second.text("/declaration/id")).expect(200);
        answer = fleet.assessment(container, "");
        assertThat(answer.text("/status")).isEqualTo("UNDETERMINED");
        assertThat(answer.at("/declared").valueStream().map(one -> one.at("/by").asString()))
                .containsExactly("the fleet foreman");
        assertThat(fleet.isWhole(container)).isTrue();
    }

    /** Whose rules govern is told by the site, where there is one; the word for it no longer counts. */
    @Test
    void aSiteTellsTheJurisdictionBeforeAnyDeclaration() {
        var container = fleet.cylinder();
        assertThat(fleet.status(container)).isEqualTo("UNDETERMINED");
        fleet.declared(Map.of("jurisdiction", "US"));
        assertThat(fleet.status(container)).isEqualTo("IN_DATE");
        assertThat(fleet.assessment(container, "").text("/declared/0/facts/0")).isEqualTo("jurisdiction");
        given.moved(container, given.site(null), "2026-11-20T09:00:00Z");
        assertThat(fleet.assessment(container, "").at("/declared")).isEmpty();
        assertThat(DeclaredFleet.counts(fleet.declared(Map.of("jurisdiction", "CA")), "/counts")).isEqualTo("0/0/1");
        assertThat(fleet.isWhole(container)).isTrue();
    }

    /** Beside a recorded owner nobody declares it the distributor's own, 49 CFR 173.301(e). */
    @Test
    void aRecordedOwnerIsNotDeclaredAway() {
        fleet.cylinder("owned", null, "owner", "the farm");
        assertThat(DeclaredFleet.counts(fleet.declared(Map.of("owned", true)), "/counts")).isEqualTo("0/0/1");
    }

    @Test
    void aRepeatIsAnsweredAndDoesNothing() {
        fleet.cylinder("coated", null);
        var session = api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString());
        var body = fleet.declaration(Map.of("coated", true));
        var first = session.post("/api/declarations", body).expect(201);
        var counts = tables.counts();
        var again = session.post("/api/declarations", body).expect(201);
        assertThat(again.header("Idempotent-Replay")).isEqualTo("true");
        assertThat(again.text("/declaration/id")).isEqualTo(first.text("/declaration/id"));
        assertThat(tables.counts()).isEqualTo(counts);
        tables.unchangedBy(() -> api.as(Role.CLERK).post("/api/declarations", body)
                .expectProblem(400, "IDEMPOTENCY_KEY_REQUIRED"));
        var id = first.text("/declaration/id");
        fleet.withdrawn(id).expect(200);
        tables.unchangedBy(() -> fleet.withdrawn(id).expectProblem(409, "DECLARATION_WITHDRAWN"));
    }

    @Test
    void theyAreListedTheLatestFirst() {
        fleet.cylinder("coated", null);
        var first = fleet.declared(Map.of("coated", true)).text("/declaration/id");
        var second = fleet.declared(Map.of("owned", true)).text("/declaration/id");
        var page = api.as(Role.ADMINISTRATOR).get("/api/declarations?size=1").expect(200);
        assertThat(page.text("/items/0/id")).isEqualTo(second);
        assertThat(page.text("/items/0/group/maker")).isEqualTo(fleet.maker);
        var next = api.as(Role.ADMINISTRATOR).get("/api/declarations?size=1&cursor=" + page.text("/next")).expect(200);
        assertThat(next.text("/items/0/id")).isEqualTo(first);
        assertThat(next.at("/items/0/facts/coated").asBoolean()).isTrue();
    }

    @Test
    void aRecordThatWasMergedIsInNoGroup() {
        var kept = fleet.cylinder("coated", null);
        var other = fleet.cylinder("coated", null, "tare", null);
        var clerk = api.as(Role.CLERK);
        var merged = clerk.ifMatch(fleet.container(kept)).post("/api/containers/" + kept + "/merges",
                Map.of("absorbed", other, "setAside", List.of("serial"), "reason", "read twice")).expect(201);
        assertThat(merged.status()).isEqualTo(201);
        var declared = fleet.send("/api/declarations", DeclaredFleet.declaration(Map.of("coated", true),
                Map.of("containers", List.of(kept, other)))).expect(201);
        assertThat(declared.at("/counts/containers").asInt()).isOne();
        assertThat(jdbc.sql("select coated from container where id = ?").param(other).query(Boolean.class).list())
                .containsOnlyNulls();
        assertThat(fleet.isWhole(kept)).isTrue();
    }

    /** A record that is opened again must not rest on what was withdrawn while it was closed. */
    @Test
    void aWithdrawalReachesAClosedRecordToo() {
        var kept = fleet.cylinder("coated", null);
        var other = fleet.cylinder("coated", null, "tare", null);
        var declaration = fleet.declared(Map.of("coated", true)).text("/declaration/id");
        var clerk = api.as(Role.CLERK);
        var act = clerk.ifMatch(fleet.container(kept)).post("/api/containers/" + kept + "/merges",
                Map.of("absorbed", other, "setAside", List.of("serial"), "reason", "read twice")).expect(201);
        var withdrawn = fleet.withdrawn(declaration).expect(200);
        assertThat(withdrawn.text("/declaration/state")).isEqualTo("WITHDRAWN");
        clerk.ifMatch(fleet.container(kept)).post("/api/identity-acts/" + act.id() + "/undo",
                Map.of("reason", "two after all")).expect(200);
        for (var container : List.of(kept, other)) {
            assertThat(fleet.container(container).at("/coated").isBoolean()).isFalse();
            assertThat(fleet.status(container)).isEqualTo("UNDETERMINED");
            assertThat(fleet.isWhole(container)).isTrue();
        }
    }

    @Test
    void rolesThatDoNotAnswerForTheFleetAreRefused() {
        var body = fleet.declaration(Map.of("coated", true));
        for (var role : new Role[]{Role.FILLER, Role.YARD, Role.DISPATCHER}) {
            tables.unchangedBy(() -> {
                api.as(role).with("Idempotency-Key", "k" + role).post("/api/declarations", body).expect(403);
                api.as(role).post("/api/declarations/previews", body).expect(403);
                api.as(role).get("/api/declarations").expect(403);
            });
        }
    }
}
