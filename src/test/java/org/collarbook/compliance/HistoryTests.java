package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
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
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What several records of one month say together: completed where one tells more, never softened. */
@RegisterTest
class HistoryTests {

    private static final Caller YARD = new Caller(UUID.randomUUID(), "yard", Set.of(Role.YARD), CustomerScope.EVERYONE);
    private static final Rin RIN = Rin.parse("A123");

    private final Api api;
    private final Given given;
    private final Requalifications requalifications;

    HistoryTests(Api api, Given given, Requalifications requalifications) {
        this.api = api;
        this.given = given;
        this.requalifications = requalifications;
    }

    private static Requalification of(@Nullable Method method, @Nullable Rin rin, Result result) {
        return new Requalification(YearMonth.of(2022, 5), method, false, false, rin, false, result);
    }

    private Answer assessed(Requalification... records) {
        var id = given.registered();
        given.moved(id, given.site(null), "2026-11-20T09:00:00Z");
        List.of(records).forEach(one -> requalifications.append(new RequalificationEntry(id, one, null, null), YARD));
        return api.as(Role.FILLER).get("/api/containers/" + id + "/assessment").expect(200);
    }

    @ParameterizedTest
    @EnumSource(value = Result.class, names = {"REJECTED", "CONDEMNED"})
    void noPassedTestOfTheMonthHidesARejectionOrCondemnation(Result result) {
        for (var method : new Method[]{null, Method.VOLUMETRIC_EXPANSION}) {
            var bad = of(method, RIN, result);
            var passed = of(Method.VOLUMETRIC_EXPANSION, RIN, Result.PASSED);
            for (var answer : List.of(assessed(bad, passed), assessed(passed, bad))) {
                assertThat(answer.text("/status")).isEqualTo(result.name());
                assertThat(answer.at("/mayFill").asBoolean()).isFalse();
                assertThat(answer.at("/mayUse").asBoolean()).isFalse();
            }
        }
    }

    @Test
    void aBareMonthIsCompletedByARecordThatTellsTheMethod() {
        assertThat(assessed(of(null, null, Result.PASSED)).text("/status")).isEqualTo("UNDETERMINED");
        var told = assessed(of(null, null, Result.PASSED), of(Method.EXTERNAL_VISUAL, RIN, Result.PASSED));
        // five years after the first inspection, 49 CFR 180.209(g)
        assertThat(told.text("/requirements/0/due")).isEqualTo("2027-05");
    }

    @Test
    void aRinRecordedLaterCompletesTheMark() {
        var without = of(Method.EXTERNAL_VISUAL, null, Result.PASSED);
        assertThat(assessed(without).body()).contains("RIN_NOT_RECORDED");
        assertThat(assessed(without, of(Method.EXTERNAL_VISUAL, RIN, Result.PASSED)).body())
                .doesNotContain("RIN_NOT_RECORDED");
    }
}
