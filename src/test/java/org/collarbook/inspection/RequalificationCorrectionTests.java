package org.collarbook.inspection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.inspection.RequalificationRecordTests.path;

import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Rin;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.springframework.transaction.support.TransactionTemplate;

/** A mistake is never overwritten: an entry supersedes it, names it and says why. */
@RegisterTest
class RequalificationCorrectionTests {

    private static final Caller YARD = new Caller(UUID.randomUUID(), "yard", Set.of(Role.YARD),
            CustomerScope.EVERYONE);

    private final Api api;
    private final Api.Session yard;
    private final Api.Session administrator;
    private final Given given;
    private final Tables tables;
    private final Requalifications requalifications;
    private final TransactionTemplate transaction;

    RequalificationCorrectionTests(Api api, Given given, Tables tables, Requalifications requalifications,
            TransactionTemplate transaction) {
        this.api = api;
        this.yard = api.as(Role.YARD);
        this.administrator = api.as(Role.ADMINISTRATOR);
        this.given = given;
        this.tables = tables;
        this.requalifications = requalifications;
        this.transaction = transaction;
    }

    private UUID inTheUs() {
        var id = given.registered();
        given.moved(id, given.site(null), "2026-11-01T09:00:00Z");
        return id;
    }

    private Answer assessed(UUID id) {
        return api.as(Role.FILLER).get("/api/containers/" + id + "/assessment").expect(200);
    }

    private static String corrections(Answer record) {
        return "/api/requalifications/" + record.id() + "/corrections";
    }

    @Test
    void aRecordIsSupersededByAnother() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        var wrong = yard.post(path(id), Sheets.volumetric(rin)).expect(201);
        assertThat(assessed(id).text("/requirements/0/due")).isEqualTo("2038-11");

        var right = yard.post(corrections(wrong), Sheets.correction("it was a proof test", Sheets.proof(rin)))
                .expect(201);
        assertThat(right.text("/method")).isEqualTo("PROOF_PRESSURE");
        assertThat(right.text("/corrects/requalification")).isEqualTo(wrong.id());
        assertThat(right.text("/corrects/reason")).isEqualTo("it was a proof test");
        assertThat(assessed(id).text("/requirements/0/due")).as("at once").isEqualTo("2036-11");

        var kept = yard.get("/api/requalifications/" + wrong.id()).expect(200);
        assertThat(kept.text("/record/expansion/total")).as("what was recorded stays").isEqualTo("63.2 cm3");
        assertThat(kept.text("/corrected/replacedBy")).isEqualTo(right.id());
        assertThat(yard.get(path(id)).at("/items").findValuesAsString("method")).containsExactly("PROOF_PRESSURE");
        assertThat(yard.get(path(id) + "?all=true").at("/items").findValuesAsString("method"))
                .containsExactlyInAnyOrder("PROOF_PRESSURE", "VOLUMETRIC_EXPANSION");
        assertThat(requalifications.of(List.of(id)).get(id)).extracting(Requalification::method)
                .containsExactly(Method.PROOF_PRESSURE);
    }

    @Test
    void aCorrectionIsCorrectedInItsTurnButNothingTwice() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        var first = yard.post(path(id), Sheets.visual(rin)).expect(201);
        var sheet = Sheets.visual(rin);
        sheet.put("operator", "R. Pine");
        var second = yard.post(corrections(first), Sheets.correction("another operator", sheet)).expect(201);
        tables.unchangedBy(() -> {
            var refused = yard.post(corrections(first), Sheets.correction("again", sheet))
                    .expectProblem(409, "ALREADY_CORRECTED");
            assertThat(refused.text("/replacedBy")).isEqualTo(second.id());
        });
        var voided = yard.post(corrections(second), Sheets.correction("another cylinder", null)).expect(201);
        assertThat(voided.id()).isEqualTo(second.id());
        assertThat(voided.at("/corrected/replacedBy").isString()).isFalse();
        assertThat(yard.get(path(id)).at("/items")).isEmpty();
        assertThat(assessed(id).text("/status")).isEqualTo("OVERDUE");
        tables.unchangedBy(() -> yard.post(corrections(second), Sheets.correction("again", null))
                .expectProblem(409, "ALREADY_CORRECTED"));
        // the very same test, after all
        var anew = yard.post(path(id), Sheets.visual(rin)).expect(201);
        assertThat(anew.id()).isNotIn(first.id(), second.id());
        assertThat(assessed(id).text("/status")).isEqualTo("IN_DATE");
        assertThat(yard.get(path(id) + "?all=true").at("/items")).hasSize(3);
    }

    /** 49 CFR 180.203: condemned "may not be restored"; a slip of the pen is another matter. */
    @Test
    void aCondemnationIsCorrectedByAnAdministratorAlone() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        var condemned = yard.post(path(id), Sheets.condemned(rin)).expect(201);
        tables.unchangedBy(() -> {
            for (var role : List.of(Role.YARD, Role.CLERK)) {
                for (var record : new Object[]{null, Sheets.visual(rin)}) {
                    var refused = api.as(role).post(corrections(condemned), Sheets.correction("a mistake", record))
                            .expectProblem(403, "ADMINISTRATOR_REQUIRED");
                    assertThat(refused.text("/citation/section")).contains("180.205(i)");
                }
            }
            assertThat(administrator.post(corrections(condemned), Sheets.correction(" ", null))
                    .expectProblem(400, "INVALID_INPUT").errors()).isEqualTo(Map.of("/reason", "MISSING"));
        });
        var right = administrator.post(corrections(condemned), Sheets.correction("serial misread", Sheets.visual(rin)))
                .expect(201);
        assertThat(right.text("/result")).isEqualTo("PASSED");
        assertThat(assessed(id).text("/status")).isEqualTo("IN_DATE");
        yard.post(path(id), Sheets.volumetric(rin)).expect(201);
    }

    @Test
    void anotherRecordOfACondemnedContainerCanBeCorrectedAndItStaysCondemned() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        var earlier = Sheets.visual(rin);
        earlier.put("performedOn", "2024-03-05");
        var old = yard.post(path(id), earlier).expect(201);
        yard.post(path(id), Sheets.condemned(rin)).expect(201);
        earlier.put("operator", "R. Pine");
        yard.post(corrections(old), Sheets.correction("another operator", earlier)).expect(201);
        assertThat(assessed(id).text("/status")).isEqualTo("CONDEMNED");
    }

    @Test
    void aWrongCorrectionLeavesNoTrace() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        var record = yard.post(path(id), Sheets.visual(rin)).expect(201);
        var tooLow = Sheets.proof(rin);
        tooLow.put("testPressurePsig", 100);
        tables.unchangedBy(() -> {
            assertThat(yard.post(corrections(record), Sheets.correction("x", tooLow))
                    .expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/record/testPressurePsig", "TEST_PRESSURE_TOO_LOW"));
            assertThat(yard.post(corrections(record), Sheets.correction("x", Map.of("method", "EXTERNAL_VISUAL")))
                    .expectProblem(400, "INVALID_INPUT").errors()).containsEntry("/record/operator", "MISSING");
            assertThat(yard.post(corrections(record), Map.of("reason", "x")).expectProblem(400, "INVALID_INPUT")
                    .errors()).isEqualTo(Map.of("/record", "MISSING"));
            assertThat(yard.post(corrections(record), Map.of("reason", "x", "void", true, "record",
                    Sheets.visual(rin))).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/record", "NOT_ALLOWED"));
        });
    }

    /** What the ledger brought is a mark alone; its full record takes its place. */
    @Test
    void aBareMarkIsCompletedByACorrectionAndALedgerDoesNotBringAMistakeBack() {
        var id = inTheUs();
        var rin = Sheets.approved(api);
        var mark = new RequalificationEntry(id, Requalification.passed(YearMonth.of(2026, 11), Method.EXTERNAL_VISUAL,
                Rin.parse(rin)), "11-26E", null);
        requalifications.append(mark, YARD);
        var listed = yard.get(path(id)).expect(200);
        assertThat(listed.text("/items/0/asStamped")).isEqualTo("11-26E");
        assertThat(listed.at("/items/0/record").isObject()).isFalse();
        tables.unchangedBy(() -> yard.post(path(id), Sheets.visual(rin)).expectProblem(409, "ALREADY_RECORDED"));
        var bare = listed.text("/items/0/id");
        yard.post("/api/requalifications/" + bare + "/corrections",
                Sheets.correction("the full record", Sheets.visual(rin))).expect(201);
        assertThat(yard.get(path(id)).at("/items")).hasSize(1);
        tables.unchangedBy(() -> transaction.executeWithoutResult(
                status -> assertThat(requalifications.insert(List.of(mark), YARD.id())).isZero()));
    }

    @Test
    void aRepeatUnderTheSameKeyCorrectsOnce() {
        var id = inTheUs();
        var record = yard.post(path(id), Sheets.visual(Sheets.approved(api))).expect(201);
        var once = yard.with("Idempotency-Key", Given.serial());
        var first = once.post(corrections(record), Sheets.correction("another cylinder", null)).expect(201);
        tables.unchangedBy(() -> assertThat(once.post(corrections(record), Sheets.correction("another cylinder", null))
                .expect(201).json()).isEqualTo(first.json()));
    }
}
