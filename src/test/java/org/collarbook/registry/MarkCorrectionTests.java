package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

@RegisterTest
class MarkCorrectionTests {

    private final Api.Session clerk;
    private final Api api;
    private final Tables tables;

    MarkCorrectionTests(Api api, Tables tables) {
        this.api = api;
        this.clerk = api.as(Role.CLERK);
        this.tables = tables;
    }

    /** As text: the client would leave a null out. */
    private static String marks(String name, @Nullable String value) {
        return "{\"marks\":{\"" + name + "\":" + (value == null ? "null" : "\"" + value + "\"")
                + "},\"reason\":\"read again in daylight\"}";
    }

    @Test
    void aMisreadSerialIsCorrectedAndTakenBackToTheLetter() {
        var body = Given.cylinder();
        body.put("serial", body.get("serial") + "b");
        var created = clerk.post("/api/containers", body).expect(201);
        var path = "/api/containers/" + created.id();
        var serial = Given.serial();

        var done = clerk.ifMatch(created).post(path + "/mark-corrections", marks("serial", serial)).expect(201);

        assertThat(done.text("/changes/0/field")).isEqualTo("serial");
        assertThat(done.text("/changes/0/was")).isEqualTo(body.get("serial"));
        assertThat(done.text("/changes/0/became")).isEqualTo(serial);
        assertThat(clerk.get(path).text("/serial")).isEqualTo(serial);
        assertThat(clerk.get(path).text("/asStamped/manufactured")).as("what was not read anew keeps its stamp")
                .isEqualTo("5-04");

        clerk.ifMatch(done).post("/api/mark-corrections/" + done.id() + "/reversals",
                Map.of("reason", "the first reading was right")).expect(201);
        assertThat(clerk.get(path).json().toString().replace("\"version\":2", "\"version\":0"))
                .isEqualTo(created.json().toString());
        assertThat(clerk.get("/api/audit/verification?container=" + created.id()).expect(200).at("/broken"))
                .isEmpty();
    }

    @Test
    void aMonthThatCannotBeReadAfterAllIsUnknownAndForbidsTheFill() {
        var body = Given.cylinder();
        var created = clerk.post("/api/containers", body).expect(201);

        clerk.ifMatch(created).post("/api/containers/" + created.id() + "/mark-corrections",
                marks("manufactured", null)).expect(201);

        assertThat(clerk.get("/api/containers/" + created.id()).at("/manufactured").isMissingNode()).isTrue();
        assertThat(clerk.get("/api/containers/" + created.id() + "/assessment").at("/mayFill").booleanValue())
                .isFalse();
    }

    @Test
    void isTakenBackOnlyWhileNoLaterOneChangedTheSameMark() {
        var created = clerk.post("/api/containers", Given.cylinder()).expect(201);
        var path = "/api/containers/" + created.id() + "/mark-corrections";
        var first = clerk.ifMatch(created).post(path, marks("serial", Given.serial())).expect(201);
        var tare = clerk.ifMatch(first).post(path, marks("tare", "17.4 lb")).expect(201);
        var second = clerk.ifMatch(tare).post(path, marks("serial", Given.serial())).expect(201);

        tables.unchangedBy(() -> assertThat(clerk.ifMatch(second)
                .post("/api/mark-corrections/" + first.id() + "/reversals", Map.of("reason", "wrong"))
                .expectProblem(409, "CORRECTED_SINCE").text("/correction")).isEqualTo(second.id()));
        // another mark is another matter
        var untared = clerk.ifMatch(second).post("/api/mark-corrections/" + tare.id() + "/reversals",
                Map.of("reason", "wrong")).expect(201);
        var once = clerk.ifMatch(untared).post("/api/mark-corrections/" + second.id() + "/reversals",
                Map.of("reason", "wrong")).expect(201);
        // the reversal is the later act now: it, and not what it took back, is to be taken back
        assertThat(clerk.ifMatch(once).post("/api/mark-corrections/" + second.id() + "/reversals",
                Map.of("reason", "wrong")).expectProblem(409, "CORRECTED_SINCE").text("/correction"))
                .isEqualTo(once.id());
        clerk.ifMatch(once).post("/api/mark-corrections/" + once.id() + "/reversals", Map.of("reason", "right"))
                .expect(201);
    }

    @Test
    void whatIsRefusedChangesNothing() {
        var other = Given.cylinder();
        var first = clerk.post("/api/containers", other).expect(201);
        var body = Given.cylinder();
        var created = clerk.post("/api/containers", body).expect(201);
        var path = "/api/containers/" + created.id() + "/mark-corrections";

        tables.unchangedBy(() -> {
            assertThat(clerk.ifMatch(created).post(path, marks("serial", other.get("serial") + ""))
                    .expectProblem(409, "NATURAL_KEY_TAKEN").text("/container/id")).isEqualTo(first.id());
            clerk.ifMatch(created).post(path, marks("serial", body.get("serial") + ""))
                    .expectProblem(409, "NOTHING_CHANGES");
            assertThat(clerk.ifMatch(created).post(path, marks("manufactured", "13-04"))
                    .expectProblem(400, "INVALID_INPUT").errors()).containsKey("/marks/manufactured");
            assertThat(clerk.ifMatch(created).post(path, marks("serial", null)).expectProblem(400, "INVALID_INPUT")
                    .errors()).isEqualTo(Map.of("/marks/serial", "MISSING"));
            assertThat(clerk.ifMatch(created).post(path, marks("owner", "x")).expectProblem(400, "INVALID_INPUT")
                    .errors()).isEqualTo(Map.of("/marks", "UNKNOWN_FIELD"));
            assertThat(clerk.ifMatch(created).post(path, Map.of()).expectProblem(400, "INVALID_INPUT").errors())
                    .isEqualTo(Map.of("/marks", "MISSING", "/reason", "MISSING"));
            clerk.post(path, marks("serial", Given.serial())).expectProblem(428, "IF_MATCH_REQUIRED");
            api.as(Role.YARD).ifMatch(created).post(path, marks("serial", Given.serial()))
                    .expectProblem(403, "FORBIDDEN");
            clerk.ifMatch(created).post("/api/mark-corrections/" + UUID.randomUUID() + "/reversals",
                    Map.of("reason", "x")).expectProblem(404, "NOT_FOUND");
        });
    }

    @Test
    void noFillGoesIntoACylinderWhoseIdentityIsDisputed() {
        var created = clerk.post("/api/containers", Given.cylinder()).expect(201);
        var path = "/api/containers/" + created.id();
        clerk.post(path + "/holds", Map.of("reason", "IDENTITY_DISPUTED", "note", "two readings of the serial"))
                .expect(201);

        var assessed = clerk.get(path + "/assessment").expect(200);
        assertThat(assessed.text("/status")).isEqualTo("ON_HOLD");
        assertThat(assessed.at("/mayFill").booleanValue()).isFalse();
    }
}
