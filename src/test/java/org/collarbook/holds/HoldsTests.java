package org.collarbook.holds;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

@RegisterTest
class HoldsTests {

    private static final String NOBODY = "00000000-0000-7000-8000-000000000000";
    private static final Map<String, Object> INSPECTED = Map.of("by", "COMPETENT_PERSON", "name", "R. Amsel",
            "qualification", "inspector of the test yard", "note", "read with a lamp");
    private static final Map<String, Object> OFFICE = Map.of("by", "CLERK", "note", "told by telephone");

    private final Api api;
    private final Given given;
    private final Tables tables;

    HoldsTests(Api api, Given given, Tables tables) {
        this.api = api;
        this.given = given;
        this.tables = tables;
    }

    private static Map<String, @Nullable Object> inDate() {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        return body;
    }

    /** At a site of a customer. */
    private UUID fillable() {
        var id = given.registered(inDate());
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        return id;
    }

    private static String at(UUID container) {
        return "/api/containers/" + container + "/holds";
    }

    private Answer place(UUID container, HoldReason reason) {
        return api.as(Role.FILLER).post(at(container), Map.of("reason", reason, "note", "seen at the dock"))
                .expect(201);
    }

    private String held(UUID container, HoldReason reason) {
        return place(container, reason).text("/hold/id");
    }

    private Answer lift(Role role, String hold, Map<String, Object> body) {
        return api.as(role).post("/api/holds/" + hold + "/lifts", body);
    }

    private Answer assessed(UUID container) {
        return api.as(Role.FILLER).get("/api/containers/" + container + "/assessment").expect(200);
    }

    private static List<String> texts(Answer answer, String list, String field) {
        var texts = new ArrayList<String>();
        answer.at(list).forEach(one -> texts.add(one.at(field).asString()));
        return texts;
    }

    @Test
    void aFillerHoldsItAndItMayNotBeFilledUntilAllHoldsAreLifted() {
        var body = inDate();
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        assertThat(assessed(id).text("/status")).isEqualTo("IN_DATE");

        var placed = place(id, HoldReason.ILLEGIBLE_MARKS);
        assertThat(placed.text("/outcome")).isEqualTo("HELD");
        assertThat(placed.header("Location")).isEqualTo(at(id));
        assertThat(placed.text("/hold/citation/section")).isEqualTo("173.301(b)");
        assertThat(placed.text("/hold/occurredAt")).isEqualTo("2026-11-25T12:00:00Z");
        var second = held(id, HoldReason.LOST);

        var check = api.as(Role.FILLER).get("/api/fill-check?specificGravity=0.508&serial=" + body.get("serial"))
                .expect(200);
        assertThat(check.at("/mayFill").asBoolean()).isFalse();
        assertThat(check.text("/status")).isEqualTo("ON_HOLD");
        assertThat(texts(check, "/refusals", "/code")).containsOnly("ON_HOLD").hasSize(2);
        assertThat(texts(check, "/refusals", "/text")).contains(
                "A hold stands. ILLEGIBLE_MARKS: Its marks cannot be read.", "A hold stands. LOST: It is lost.");
        assertThat(check.text("/refusals/0/citation/section")).isEqualTo("173.301(b)");

        lift(Role.YARD, placed.text("/hold/id"), INSPECTED).expect(201);
        assertThat(assessed(id).text("/status")).as("the other one stands").isEqualTo("ON_HOLD");
        lift(Role.CLERK, second, OFFICE).expect(201);
        assertThat(assessed(id).text("/status")).isEqualTo("IN_DATE");
        assertThat(assessed(id).at("/mayFill").asBoolean()).isTrue();

        var history = api.as(Role.DISPATCHER).get(at(id)).expect(200);
        assertThat(texts(history, "/items", "/lift/by")).containsExactlyInAnyOrder("CLERK", "COMPETENT_PERSON");
        assertThat(texts(history, "/items", "/lift/name")).contains("R. Amsel");
        assertThat(api.as(Role.YARD).get(at(id) + "?standing=true").at("/items")).isEmpty();
    }

    @ParameterizedTest
    @EnumSource
    void everyReasonCanBePlacedAndTakesItOutOfService(HoldReason reason) {
        var id = fillable();
        held(id, reason);
        var assessed = assessed(id);
        assertThat(assessed.text("/status")).isEqualTo("ON_HOLD");
        for (var permission : List.of("/mayFill", "/mayCarry", "/mayUse")) {
            assertThat(assessed.at(permission).asBoolean()).as(permission).isFalse();
        }
        assertThat(texts(assessed, "/reasons", "/text"))
                .contains("A hold stands. " + reason + ": " + reason.sentence());
    }

    @Test
    void theReasonsTellWhatLiftsEach() {
        var reasons = api.as(Role.FILLER).get("/api/holds/reasons").expect(200);
        assertThat(texts(reasons, "", "/reason"))
                .containsExactly(List.of(HoldReason.values()).stream().map(Enum::name).toArray(String[]::new));
        reasons.json().forEach(reason -> {
            assertThat(reason.at("/liftedBy").isEmpty()).as(reason.toString()).isFalse();
            assertThat(reason.at("/citation/basis").asString()).isIn("TEXT", "COMMON_PRACTICE");
            assertThat(reason.at("/requalifications").isEmpty()).as(reason.toString())
                    .isEqualTo(!reason.at("/liftedBy").toString().contains("REQUALIFICATION"));
        });
    }

    /** Each hold tried with each way: lifted by those it names, refused by the others, which changes nothing. */
    @ParameterizedTest
    @EnumSource
    void onlyWhatAReasonNamesLiftsIt(HoldReason reason) {
        for (var way : List.of(LiftedBy.COMPETENT_PERSON, LiftedBy.CLERK)) {
            var id = fillable();
            var hold = held(id, reason);
            var body = way == LiftedBy.CLERK ? OFFICE : INSPECTED;
            if (reason.liftedBy().contains(way)) {
                assertThat(lift(Role.CLERK, hold, body).expect(201).text("/lift/by")).isEqualTo(way.name());
                assertThat(assessed(id).text("/status")).isEqualTo("IN_DATE");
                tables.unchangedBy(() -> lift(Role.CLERK, hold, body).expectProblem(409, "ALREADY_LIFTED"));
            } else {
                tables.unchangedBy(() -> {
                    var refused = lift(Role.CLERK, hold, body).expectProblem(409, "NOT_LIFTED_SO");
                    assertThat(texts(refused, "/liftedBy", "")).containsExactlyInAnyOrderElementsOf(
                            reason.liftedBy().stream().map(Enum::name).toList());
                });
                assertThat(assessed(id).text("/status")).isEqualTo("ON_HOLD");
            }
        }
    }

    /** A stationary tank is never requalified; common practice, no source. */
    @Test
    void aDentedStationaryTankIsLiftedByACompetentPerson() {
        var body = Given.cylinder();
        body.put("kind", "STATIONARY_TANK");
        body.put("specification", "ASME");
        body.put("waterCapacity", "500 gal");
        var id = given.registered(body);
        var hold = held(id, HoldReason.DENTED);
        assertThat(lift(Role.YARD, hold, INSPECTED).expect(201).text("/lift/qualification"))
                .isEqualTo("inspector of the test yard");
    }

    @Test
    void theYardInspectsAndTheOfficeDecides() {
        var id = fillable();
        var lost = held(id, HoldReason.LOST);
        tables.unchangedBy(() -> {
            lift(Role.YARD, lost, OFFICE).expectProblem(403, "FORBIDDEN");
            lift(Role.FILLER, lost, OFFICE).expectProblem(403, "FORBIDDEN");
            lift(Role.DISPATCHER, lost, INSPECTED).expectProblem(403, "FORBIDDEN");
        });
        lift(Role.ADMINISTRATOR, lost, OFFICE).expect(201);
    }

    /** NFPA 58 Annex C.3.2.2: a 4E cylinder that was in a fire is out of service for good. */
    @Test
    void anAluminiumCylinderThatWasInAFireIsCondemned() {
        var body = inDate();
        body.put("specification", "DOT-4E240");
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        var answer = api.as(Role.FILLER)
                .post(at(id), Map.of("reason", "FIRE_OR_OVERHEATED", "occurredAt", "2026-10-03T10:00:00Z")).expect(201);
        assertThat(answer.text("/outcome")).isEqualTo("CONDEMNED");
        assertThat(answer.text("/condemned/month")).isEqualTo("2026-10");
        assertThat(answer.text("/condemned/citation/section")).isEqualTo("Annex C.3.2.2");
        assertThat(answer.text("/condemned/citation/basis")).isEqualTo("QUOTED");
        assertThat(assessed(id).text("/status")).isEqualTo("CONDEMNED");
        assertThat(api.as(Role.FILLER).get(at(id)).at("/items")).isEmpty();
        tables.unchangedBy(() -> {
            api.as(Role.FILLER).post(at(id), Map.of("reason", "FIRE_OR_OVERHEATED"))
                    .expectProblem(409, "CONTAINER_CONDEMNED");
            api.as(Role.FILLER).post(at(id), Map.of("reason", "LOST")).expectProblem(409, "CONTAINER_CONDEMNED");
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"DOT-4BA240", "DOT-4BW240", "DOT-3B300"})
    void aSteelCylinderThatWasInAFireIsHeld(String specification) {
        var body = inDate();
        body.put("specification", specification);
        assertThat(place(given.registered(body), HoldReason.FIRE_OR_OVERHEATED).text("/outcome")).isEqualTo("HELD");
    }

    /** In Honolulu, ten hours behind, it is still November. */
    @Test
    void aCondemnationIsInForceAtOnceWhereverItStands() {
        var body = inDate();
        body.put("specification", "DOT-4E240");
        var id = given.registered(body);
        var site = Given.depot();
        site.put("zone", "Pacific/Honolulu");
        given.moved(id, UUID.fromString(api.as(Role.CLERK).post("/api/sites", site).expect(201).id()),
                "2026-11-20T09:00:00Z");
        api.as(Role.FILLER).post(at(id), Map.of("reason", "FIRE_OR_OVERHEATED", "occurredAt", "2026-11-01T05:00:00Z"))
                .expect(201);
        assertThat(assessed(id).text("/status")).isEqualTo("CONDEMNED");
    }

    /** 49 CFR 173.301(e): asked for wherever the owner is somebody else, and not only where a hold says so. */
    @Test
    void consentIsAskedForWhenTheOwnerIsNotTheDistributor() {
        var body = inDate();
        body.put("owned", false);
        body.put("owner", "Harrow Farm");
        var id = given.registered(body);
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        assertThat(texts(assessed(id), "/reasons", "/code")).contains("MISSING_OWNER_CONSENT");
        assertThat(assessed(id).at("/mayFill").asBoolean()).isFalse();

        var consented = new LinkedHashMap<>(body);
        consented.put("ownerConsent", true);
        consented.put("reason", "letter of the owner");
        var read = api.as(Role.CLERK).get("/api/containers/" + id).expect(200);
        api.as(Role.CLERK).ifMatch(read).put("/api/containers/" + id, consented).expect(200);
        assertThat(texts(assessed(id), "/reasons", "/code")).doesNotContain("MISSING_OWNER_CONSENT");

        held(id, HoldReason.OWNER_CONSENT_MISSING);
        assertThat(assessed(id).at("/mayFill").asBoolean()).isFalse();
    }

    @Test
    void heldOnesAreOnThePullListAndInTheCustomersPortal() {
        var customer = given.customer();
        var site = given.site(customer);
        var id = given.registered(inDate());
        given.moved(id, site, "2026-11-20T09:00:00Z");
        var pullList = "/api/pull-list?before=2026-12-10&site=" + site;
        assertThat(api.as(Role.DISPATCHER).get(pullList).expect(200).body()).doesNotContain(id.toString());

        held(id, HoldReason.LEAKING);
        var pulled = api.as(Role.DISPATCHER).get(pullList).expect(200);
        assertThat(pulled.body()).contains(id.toString(), "ON_HOLD");
        var seen = api.asPortalOf(new CustomerId(customer)).get("/api/portal/containers").expect(200);
        assertThat(seen.body()).contains(id.toString(), "ON_HOLD").doesNotContain("seen at the dock");
    }

    @Test
    void theyAreListedByPagesTheLatestFirst() throws Exception {
        var id = fillable();
        var placed = new ArrayList<String>();
        for (var reason : List.of(HoldReason.LOST, HoldReason.DENTED, HoldReason.LOST)) {
            placed.addFirst(held(id, reason));
            Thread.sleep(2);
        }
        var first = api.as(Role.YARD).get(at(id) + "?size=2").expect(200);
        var second = api.as(Role.YARD).get(at(id) + "?size=2&cursor=" + first.text("/next")).expect(200);
        var listed = texts(first, "/items", "/id");
        listed.addAll(texts(second, "/items", "/id"));
        assertThat(listed).isEqualTo(placed);
    }

    @Test
    void aRepeatUnderTheSameKeyHoldsAndLiftsOnce() {
        var id = fillable();
        var once = api.as(Role.CLERK).with("Idempotency-Key", Given.serial());
        var again = api.as(Role.CLERK).with("Idempotency-Key", Given.serial());
        var first = once.post(at(id), Map.of("reason", "LOST")).expect(201);
        var path = "/api/holds/" + first.text("/hold/id") + "/lifts";
        var lifted = again.post(path, OFFICE).expect(201);
        tables.unchangedBy(() -> {
            assertThat(once.post(at(id), Map.of("reason", "LOST")).expect(201).json()).isEqualTo(first.json());
            assertThat(again.post(path, OFFICE).expect(201).json()).isEqualTo(lifted.json());
            once.post(at(id), Map.of("reason", "DENTED")).expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
        });
    }

    @Test
    void unknownContainersAndHoldsAreNotFound() {
        tables.unchangedBy(() -> {
            api.as(Role.FILLER).get("/api/containers/" + NOBODY + "/holds").expectProblem(404, "NOT_FOUND");
            api.as(Role.FILLER).post("/api/containers/" + NOBODY + "/holds", Map.of("reason", "LOST"))
                    .expectProblem(404, "NOT_FOUND");
            api.as(Role.CLERK).post("/api/holds/" + NOBODY + "/lifts", OFFICE).expectProblem(404, "NOT_FOUND");
        });
    }

    @Test
    void aDayBeforeTheRegistrationIsFineAndAScannerAheadStandsFromNow() {
        var id = fillable();
        assertThat(api.as(Role.FILLER).post(at(id), Map.of("reason", "LOST", "occurredAt", "2021-02-03T04:05:06Z"))
                .expect(201).text("/hold/occurredAt")).isEqualTo("2021-02-03T04:05:06Z");
        assertThat(api.as(Role.FILLER).post(at(id), Map.of("reason", "LOST", "occurredAt", "2026-11-25T12:04:00Z"))
                .expect(201).text("/hold/occurredAt")).isEqualTo("2026-11-25T12:00:00Z");
    }
}
