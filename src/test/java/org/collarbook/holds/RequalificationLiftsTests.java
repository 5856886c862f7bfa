package org.collarbook.holds;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.inspection.RequalificationRecorded;
import org.collarbook.inspection.Requalifications;
import org.collarbook.inspection.Sheets;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Rin;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.transaction.support.TransactionTemplate;

/** What a passed requalification lifts, in the transaction that records it. */
@RegisterTest
class RequalificationLiftsTests {

    private static final Caller YARD = new Caller(UUID.randomUUID(), "yard", Set.of(Role.YARD), CustomerScope.EVERYONE);

    private final Api api;
    private final Given given;
    private final Holds holds;
    private final Requalifications requalifications;
    private final TransactionTemplate transaction;
    private final ApplicationEventPublisher events;
    private final Tables tables;
    private final TestClock clock;

    RequalificationLiftsTests(Api api, Given given, Holds holds, Requalifications requalifications,
            TransactionTemplate transaction, ApplicationEventPublisher events, Tables tables,
            TestClock clock) {
        this.api = api;
        this.given = given;
        this.holds = holds;
        this.requalifications = requalifications;
        this.transaction = transaction;
        this.events = events;
        this.tables = tables;
        this.clock = clock;
    }

    private UUID held(HoldReason... reasons) {
        var id = given.registered();
        for (var reason : reasons) {
            assertThat(holds.place(id, reason, null, Instant.parse("2026-10-05T08:00:00Z"), YARD))
                    .isInstanceOf(Placing.Placed.class);
        }
        return id;
    }

    private void record(UUID container, String month, @Nullable Method method, Result result) {
        requalifications.append(new RequalificationEntry(container, new Requalification(YearMonth.parse(month), method,
                false, false, Rin.parse("B045"), false, result), null, null), YARD);
    }

    private List<HoldReason> standing(UUID container) {
        return holds.standing(List.of(container)).getOrDefault(container, List.of()).stream().map(Hold::reason)
                .toList();
    }

    @ParameterizedTest
    @EnumSource
    void aPassedTestLiftsWhatARequalificationLiftsAndNothingElse(HoldReason reason) {
        var id = held(reason, HoldReason.LOST);
        record(id, "2026-11", Method.VOLUMETRIC_EXPANSION, Result.PASSED);
        assertThat(standing(id)).contains(HoldReason.LOST);
        assertThat(standing(id).size() == 1).as(reason.name())
                .isEqualTo(reason.liftedBy().contains(LiftedBy.REQUALIFICATION));
    }

    @ParameterizedTest
    @CsvSource({"2026-11,VOLUMETRIC_EXPANSION,PASSED,true", "2026-11,PROOF_PRESSURE,PASSED,true",
            "2026-11,EXTERNAL_VISUAL,PASSED,false", "2026-11,VALVE_REPLACED,PASSED,false",
            "2026-10,VOLUMETRIC_EXPANSION,PASSED,false", "2026-09,VOLUMETRIC_EXPANSION,PASSED,false",
            "2026-11,VOLUMETRIC_EXPANSION,REJECTED,false",
            "2026-11,VOLUMETRIC_EXPANSION,CONDEMNED,false", "2026-11,,PASSED,false"})
    void whatIsRecordedMustBeAPassedTestOfALaterMonth(String month, @Nullable Method method, Result result,
            boolean lifts) {
        var id = held(HoldReason.CORRODED);
        record(id, month, method, result);
        assertThat(standing(id).isEmpty()).isEqualTo(lifts);
    }

    @Test
    void theLiftNamesTheRequalificationAndTheStatusFollowsAtOnce() {
        var id = held(HoldReason.DENTED, HoldReason.TARE_LOSS);
        assertThat(api.as(Role.FILLER).get("/api/containers/" + id + "/assessment").text("/status"))
                .isEqualTo("ON_HOLD");
        record(id, "2026-11", Method.VOLUMETRIC_EXPANSION, Result.PASSED);
        assertThat(api.as(Role.FILLER).get("/api/containers/" + id + "/assessment").text("/status"))
                .isNotEqualTo("ON_HOLD");
        var lifts = api.as(Role.FILLER).get("/api/containers/" + id + "/holds").expect(200).at("/items");
        assertThat(lifts).hasSize(2).allSatisfy(hold -> {
            assertThat(hold.at("/lift/by").asString()).isEqualTo("REQUALIFICATION");
            assertThat(hold.at("/lift/requalification").asString()).isNotBlank();
            assertThat(hold.at("/lift/recordedBy").asString()).isEqualTo(YARD.id().toString());
        });
    }

    /** A mark bears no day: one recorded before the hold says nothing of what was seen after it. */
    @Test
    void aTestRecordedBeforeTheHoldDoesNotLiftIt() {
        var id = given.registered();
        record(id, "2026-11", Method.VOLUMETRIC_EXPANSION, Result.PASSED);
        holds.place(id, HoldReason.LEAKING, null, Instant.parse("2026-10-05T08:00:00Z"), YARD);
        assertThat(standing(id)).containsExactly(HoldReason.LEAKING);
        // as when another record is taken back
        transaction
                .executeWithoutResult(status -> events.publishEvent(new RequalificationRecorded(id, TestClock.TODAY)));
        assertThat(standing(id)).containsExactly(HoldReason.LEAKING);
        clock.set(LocalDate.of(2026, 11, 28));
        record(id, "2026-11", Method.PROOF_PRESSURE, Result.PASSED);
        assertThat(standing(id)).isEmpty();
    }

    @Test
    void aReliefDischargeIsOverOnceItIsRecertified() {
        var id = held(HoldReason.OVERFILLED_OR_DISCHARGED);
        var hold = holds.standing(List.of(id)).get(id).getFirst().id();
        api.as(Role.ADMINISTRATOR).post("/api/holds/" + hold + "/lifts", Map.of("by", "CLERK", "note", "vented"))
                .expectProblem(409, "NOT_LIFTED_SO");
        record(id, "2026-11", Method.EXTERNAL_VISUAL, Result.PASSED);
        assertThat(standing(id)).isEmpty();
    }

    private String tested(UUID container, Map<String, @Nullable Object> sheet, String day) {
        sheet.put("performedOn", day);
        return api.as(Role.YARD).post("/api/containers/" + container + "/requalifications", sheet).expect(201)
                .text("/id");
    }

    /**
     * 49 CFR 180.205(d): after damage it is tested before it is filled. The sheet of the morning may be entered in the
     * evening, and tells no hour.
     */
    @Test
    void ofATestOfTheHoldsDaySomebodySaysThatItCameAfter() {
        var rin = Sheets.approved(api);
        var id = given.registered();
        var dented = Instant.parse("2026-11-20T20:30:00Z");
        holds.place(id, HoldReason.DENTED, null, dented, YARD);
        var lifts = "/api/holds/" + holds.standing(List.of(id)).get(id).getFirst().id() + "/lifts";
        var another = given.registered();
        var none = List.of(UUID.randomUUID().toString(), tested(id, Sheets.volumetric(rin), "2026-11-19"),
                tested(id, Sheets.rejected(rin, "2026-11-20"), "2026-11-20"),
                tested(id, Sheets.visual(rin), "2026-11-20"), tested(another, Sheets.volumetric(rin), "2026-11-21"));
        var test = tested(id, Sheets.volumetric(rin), "2026-11-20");
        assertThat(standing(id)).containsExactly(HoldReason.DENTED);
        tables.unchangedBy(() -> none.forEach(one -> api.as(Role.YARD)
                .post(lifts, Map.of("by", "REQUALIFICATION", "requalification", one))
                .expectProblem(409, "NOT_ANSWERED_BY_TEST")));
        var lifted = api.as(Role.YARD).post(lifts, Map.of("by", "REQUALIFICATION", "requalification", test))
                .expect(201);
        assertThat(lifted.text("/lift/requalification")).isEqualTo(test);
        assertThat(standing(id)).isEmpty();
        api.as(Role.YARD).post("/api/requalifications/" + test + "/corrections",
                Sheets.correction("another cylinder", null)).expect(201);
        assertThat(standing(id)).as("taken back").containsExactly(HoldReason.DENTED);
        holds.place(another, HoldReason.DENTED, null, dented, YARD);
        tested(another, Sheets.volumetric(rin), "2026-11-22");
        assertThat(standing(another)).as("of a later day").isEmpty();
    }
}
