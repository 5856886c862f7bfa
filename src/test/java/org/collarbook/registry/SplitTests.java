package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.custody.Fill;
import org.collarbook.custody.Fills;
import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.inspection.Requalifications;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Rin;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A record on which the work on two cylinders was written down. */
@RegisterTest
class SplitTests {

    private static final Caller YARD = new Caller(UUID.randomUUID(), "yard", Set.of(Role.YARD), CustomerScope.EVERYONE);

    private final Api.Session clerk;
    private final Given given;
    private final Fills fills;
    private final Requalifications requalifications;
    private final Tables tables;
    private final Answer first;
    private final Map<String, @Nullable Object> secondBody = Given.cylinder();

    SplitTests(Api api, Given given, Fills fills, Requalifications requalifications, Tables tables) {
        this.clerk = api.as(Role.CLERK);
        this.given = given;
        this.fills = fills;
        this.requalifications = requalifications;
        this.tables = tables;
        first = clerk.post("/api/containers", Given.cylinder()).expect(201);
        given.moved(id(first), given.site(null), "2026-11-20T09:00:00Z");
        test(2016);
        test(2022);
        fills.record(new Fill(id(first), LocalDate.of(2026, 3, 3), null), YARD);
        secondBody.remove("collarRead");
    }

    private static UUID id(Answer container) {
        return UUID.fromString(container.id());
    }

    private void test(int year) {
        requalifications.append(new RequalificationEntry(id(first), new Requalification(YearMonth.of(year, 5),
                Method.VOLUMETRIC_EXPANSION, false, false, Rin.parse("A123"), false, Result.PASSED), null, null),
                YARD);
    }

    private Answer assessed(String id) {
        return clerk.get("/api/containers/" + id + "/assessment").expect(200);
    }

    private List<String> tests(String id) {
        return clerk.get("/api/containers/" + id + "/requalifications").expect(200).at("/items")
                .findValuesAsString("id");
    }

    private Map<String, Object> request(List<String> facts) {
        var request = new HashMap<String, Object>();
        request.put("container", secondBody);
        request.put("facts", facts);
        request.put("reason", "two cylinders with the same paint number");
        return request;
    }

    private Answer split(Map<String, Object> request) {
        return clerk.ifMatch(first).post("/api/containers/" + first.id() + "/splits", request);
    }

    private void assertChainsHold(String second) {
        for (var id : List.of(first.id(), second)) {
            assertThat(clerk.get("/api/audit/verification?container=" + id).expect(200).at("/broken")).isEmpty();
        }
    }

    @Test
    void theSecondGetsWhatIsItsOwnAndBothAreHeldUntilSomebodyIsSure() {
        assertThat(assessed(first.id()).at("/mayFill").booleanValue()).isTrue();
        var latest = tests(first.id()).getFirst();

        var act = split(request(List.of(latest))).expect(201);

        var second = act.text("/other");
        assertThat(act.text("/container")).isEqualTo(first.id());
        assertThat(tests(second)).containsExactly(latest);
        assertThat(tests(first.id())).hasSize(1).doesNotContain(latest);
        for (var id : List.of(first.id(), second)) {
            assertThat(assessed(id).text("/status")).isEqualTo("ON_HOLD");
            assertThat(assessed(id).at("/mayFill").booleanValue()).isFalse();
            assertThat(clerk.get("/api/containers/" + id + "/holds").text("/items/0/reason"))
                    .isEqualTo("IDENTITY_DISPUTED");
        }
        assertThat(clerk.get("/api/containers/" + second + "/fills").at("/items")).isEmpty();
        assertThat(clerk.get("/api/containers/" + first.id() + "/identity").text("/items/0/act/kind"))
                .isEqualTo("SPLIT");
        assertChainsHold(second);
    }

    @Test
    void ofTheSecondNoMoreIsKnownThanWhatIsToldOfIt() {
        var request = request(List.of());
        request.put("disputed", false);
        var second = split(request).expect(201).text("/other");

        assertThat(assessed(second).text("/status")).isEqualTo("UNDETERMINED");
        assertThat(assessed(second).at("/mayFill").booleanValue()).isFalse();
        assertThat(assessed(first.id()).at("/mayFill").booleanValue()).isTrue();
    }

    @Test
    void undoingPutsTheFactsBackAndClosesTheSecondWithWhatItHadOfItsOwn() {
        var before = assessed(first.id()).at("/requirements");
        var testsBefore = tests(first.id());
        var act = split(request(List.of(testsBefore.getFirst()))).expect(201);
        var second = act.text("/other");
        clerk.post("/api/containers/" + second + "/holds", Map.of("reason", "CORRODED")).expect(201);

        var undone = clerk.post("/api/identity-acts/" + act.id() + "/undo", Map.of("reason", "one after all"))
                .expect(200);

        assertThat(undone.text("/undone/reason")).isEqualTo("one after all");
        assertThat(tests(first.id())).isEqualTo(testsBefore);
        assertThat(assessed(first.id()).at("/requirements")).isEqualTo(before);
        assertThat(clerk.get("/api/containers/" + second).text("/mergedInto")).isEqualTo(first.id());
        // the dispute of either and the rust of the second are of the one cylinder now
        assertThat(clerk.get("/api/containers/" + first.id() + "/holds?standing=true").at("/items")
                .findValuesAsString("reason")).containsExactlyInAnyOrder("CORRODED", "IDENTITY_DISPUTED",
                        "IDENTITY_DISPUTED");
        assertThat(assessed(first.id()).at("/mayFill").booleanValue()).isFalse();
        assertChainsHold(second);

        // and the closing of the second is an act that can be undone itself
        var closing = clerk.get("/api/containers/" + first.id() + "/identity").text("/items/0/act/id");
        clerk.post("/api/identity-acts/" + closing + "/undo", Map.of("reason", "two")).expect(200);
        assertThat(clerk.get("/api/containers/" + second + "/holds").at("/items")).hasSize(2);
        assertChainsHold(second);
    }

    @Test
    void aRejectionThatIsTakenAwayAllowsNoFillUnseen() {
        requalifications.append(new RequalificationEntry(id(first), new Requalification(YearMonth.of(2025, 5),
                Method.VOLUMETRIC_EXPANSION, false, false, Rin.parse("A123"), false, Result.REJECTED), null, null),
                YARD);
        assertThat(assessed(first.id()).text("/status")).isEqualTo("REJECTED");
        var request = request(List.of(tests(first.id()).getFirst()));
        request.put("disputed", false);

        tables.unchangedBy(() -> {
            var refused = split(request).expectProblem(409, "FILL_WOULD_BE_ALLOWED");
            assertThat(refused.text("/container")).isEqualTo(first.id());
            assertThat(refused.at("/reasons").findValuesAsString("code")).contains("REJECTED");
        });
        request.put("fillWillBeAllowed", true);
        var act = split(request).expect(201);
        assertThat(act.at("/fillWasRefusedFor").toString()).contains("REJECTED");
        assertThat(assessed(act.text("/other")).at("/mayFill").booleanValue()).isFalse();
    }

    @Test
    void whatIsRefusedChangesNothing() {
        var taken = new HashMap<>(request(List.of()));
        var same = Given.cylinder();
        var other = clerk.post("/api/containers", same).expect(201);
        taken.put("container", same);
        var path = "/api/containers/" + first.id() + "/splits";
        tables.unchangedBy(() -> {
            assertThat(split(taken).expectProblem(409, "NATURAL_KEY_TAKEN").text("/container/id"))
                    .isEqualTo(other.id());
            assertThat(split(request(List.of(UUID.randomUUID().toString()))).expectProblem(400, "INVALID_INPUT")
                    .errors()).isEqualTo(Map.of("/facts", "NOT_OF_THIS_CONTAINER"));
            assertThat(split(Map.of()).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/container", "MISSING", "/reason", "MISSING"));
            assertThat(split(Map.of("container", Map.of(), "reason", "x")).expectProblem(400, "INVALID_INPUT")
                    .errors()).containsEntry("/container/serial", "MISSING");
            clerk.post(path, request(List.of())).expectProblem(428, "IF_MATCH_REQUIRED");
        });
    }
}
