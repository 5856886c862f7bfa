package org.collarbook.inspection;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;

/** Work at the bench while two records count as one container. */
@RegisterTest
class MergedRecordTests {

    private final Api api;
    private final Api.Session clerk;
    private final UUID kept;
    private final UUID other;

    MergedRecordTests(Api api, Given given) {
        this.api = api;
        this.clerk = api.as(Role.CLERK);
        var site = given.site(null);
        kept = given.registered();
        other = given.registered();
        given.moved(kept, site, "2026-11-01T09:00:00Z");
        given.moved(other, site, "2026-11-01T09:00:00Z");
    }

    private Answer merged() {
        var into = "/api/containers/" + kept;
        return clerk.ifMatch(clerk.get(into)).post(into + "/merges", Map.of("absorbed", other, "setAside",
                List.of("serial"), "fillWillBeAllowed", true, "reason", "one cylinder")).expect(201);
    }

    private void undo(Answer act) {
        clerk.post("/api/identity-acts/" + act.id() + "/undo", Map.of("reason", "two", "fillWillBeAllowed", true))
                .expect(200);
        for (var id : List.of(kept, other)) {
            assertThat(clerk.get("/api/audit/verification?container=" + id).at("/broken")).isEmpty();
        }
    }

    private static String path(UUID id) {
        return "/api/containers/" + id + "/requalifications";
    }

    private List<String> tests(UUID id) {
        return clerk.get(path(id)).expect(200).at("/items").findValuesAsString("id");
    }

    /** Or the mistake of the one cylinder would turn into a passed test of the other. */
    @Test
    void whatTookThePlaceOfAMistakeGoesWhereTheMistakeGoes() {
        var rin = Sheets.approved(api);
        var wrong = clerk.post(path(other), Sheets.volumetric(rin)).expect(201);
        var act = merged();
        assertThat(tests(kept)).containsExactly(wrong.id());
        var right = clerk.post("/api/requalifications/" + wrong.id() + "/corrections",
                Sheets.correction("it was a proof test", Sheets.proof(rin))).expect(201);
        assertThat(tests(kept)).containsExactly(right.id());
        assertThat(clerk.get("/api/audit/verification?container=" + other).at("/broken")).isEmpty();

        undo(act);

        assertThat(tests(kept)).isEmpty();
        assertThat(tests(other)).containsExactly(right.id());
    }

    /** The test was of the one that counted; of the other one nobody knows whether it was looked at. */
    @Test
    void aTestLiftsTheHoldOfTheOtherRecordOnlyWhileTheyAreOne() {
        clerk.post("/api/containers/" + other + "/holds", Map.of("reason", "DENTED", "occurredAt",
                "2026-11-01T09:00:00Z")).expect(201);
        var act = merged();
        clerk.post(path(kept), Sheets.volumetric(Sheets.approved(api))).expect(201);
        assertThat(standing(kept)).isZero();

        undo(act);

        assertThat(standing(other)).isEqualTo(1);
        assertThat(tests(kept)).hasSize(1);
        assertThat(tests(other)).isEmpty();
    }

    private int standing(UUID id) {
        return clerk.get("/api/containers/" + id + "/holds?standing=true").expect(200).at("/items").size();
    }
}
