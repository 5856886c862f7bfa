package org.collarbook.intake.scans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.intake.scans.Scans.batch;
import static org.collarbook.intake.scans.Scans.line;
import static org.collarbook.intake.scans.Scans.outcomes;
import static org.collarbook.intake.scans.Scans.texts;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What a driver scans at the stops: what stands there, what was taken away and what was left. */
@RegisterTest
class ScannedStopsTests {

    private static final String AT = "2026-11-25T10:00:00Z";

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final JdbcClient jdbc;
    private final Scans scans;

    private final UUID farm;
    private final UUID truck;
    private final UUID out;

    ScannedStopsTests(Api api, Given given, Tables tables, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.jdbc = jdbc;
        this.scans = new Scans(api);
        farm = given.site(given.customer());
        var body = Given.depot();
        body.put("kind", "VEHICLE");
        truck = UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
        out = given.registered();
        given.moved(out, farm, "2026-04-20T09:00:00Z");
    }

    private UUID onTruck(String manufactured, String tag) {
        var body = Given.cylinder();
        body.put("manufactured", manufactured);
        body.put("tag", tag);
        var id = given.registered(body);
        given.moved(id, truck, "2026-11-25T07:00:00Z");
        return id;
    }

    private Map<String, @Nullable Object> swap(@Nullable Object out, @Nullable Object in) {
        var line = new LinkedHashMap<String, @Nullable Object>();
        line.put("id", Given.serial());
        line.put("kind", "SWAP");
        line.put("occurredAt", AT);
        line.put("site", farm);
        line.put("vehicle", truck);
        line.put("out", out);
        line.put("in", in);
        return line;
    }

    private UUID place(UUID container) {
        return jdbc.sql("select site_id from placement where container_id = ?").param(container).query(UUID.class)
                .single();
    }

    @Test
    void swapsAndSightingsAreRecordedAndRepeatedHarmlessly() {
        var tag = "CB-" + Given.serial();
        var in = onTruck("6-20", tag);
        var seen = onTruck("6-20", "CB-" + Given.serial());
        var lines = batch(List.of(swap(Map.of("containerId", out), Map.of("tag", tag)),
                line("SEEN", seen, AT, "site", farm)));
        var first = scans.send(Role.YARD, lines).expect(201);
        assertThat(outcomes(first)).as(first.body()).containsExactly("RECORDED", "RECORDED");
        assertThat(first.text("/lines/0/swap/in/containerId")).isEqualTo(in.toString());
        assertThat(first.at("/lines/0/swap/allowed").booleanValue()).isTrue();
        assertThat(first.at("/lines/1/disputed").booleanValue()).isTrue();
        assertThat(place(out)).isEqualTo(truck);
        assertThat(place(in)).isEqualTo(farm);
        assertThat(place(seen)).isEqualTo(truck);
        var before = tables.count("movement") + tables.count("sighting") + tables.count("swap");
        var again = scans.send(Role.YARD, lines).expect(200);
        assertThat(outcomes(again)).containsExactly("REPEATED", "REPEATED");
        assertThat(texts(again, "/lines", "first")).containsExactly("RECORDED", "RECORDED");
        assertThat(again.text("/lines/1/sightingId")).isEqualTo(first.text("/lines/1/sightingId"));
        assertThat(tables.count("movement") + tables.count("sighting") + tables.count("swap")).isEqualTo(before);
        for (var id : List.of(out, in, seen)) {
            assertThat(api.as(Role.CLERK).get("/api/audit/verification?container=" + id).at("/whole").asBoolean())
                    .isTrue();
        }
    }

    @Test
    void oneThatWasNotAllowedHasHappenedAllTheSame() {
        var overdue = onTruck("5-04", "CB-" + Given.serial());
        var answer = scans.send(Role.YARD, batch(List.of(swap(Map.of("containerId", out), Map.of("containerId",
                overdue))))).expect(201);
        assertThat(outcomes(answer)).containsExactly("RECORDED_NOT_ALLOWED");
        assertThat(answer.at("/lines/0/reasons").findValuesAsString("code")).contains("OVERDUE");
        assertThat(answer.at("/counts/recordedNotAllowed").asInt()).isEqualTo(1);
        assertThat(place(overdue)).isEqualTo(farm);
    }

    /** Held in the evening, long after it was left there. */
    @Test
    void itIsJudgedByItsOwnMoment() {
        var in = onTruck("6-20", "CB-" + Given.serial());
        api.as(Role.YARD).post("/api/containers/" + in + "/holds", Map.of("reason", "DENTED", "occurredAt",
                "2026-11-25T11:00:00Z")).expect(201);
        assertThat(outcomes(scans.send(Role.YARD, batch(List.of(swap(null, Map.of("containerId", in)))))
                .expect(201))).containsExactly("RECORDED");
    }

    @Test
    void aLineThatIsRefusedSaysWhereAndRecordsNothingOfEither() {
        var elsewhere = given.registered();
        given.moved(elsewhere, given.site(null), "2026-11-20T09:00:00Z");
        var in = onTruck("6-20", "CB-" + Given.serial());
        var facts = tables.count("movement") + tables.count("swap") + tables.count("sighting");
        var answer = scans.send(Role.YARD, batch(List.of(
                swap(Map.of("containerId", out), Map.of("containerId", elsewhere)), swap(null, null),
                swap(Map.of("tag", "NO-SUCH"), Map.of("serial", "NO-SUCH")),
                swap(Map.of("containerId", out), Map.of()),
                swap(Map.of("containerId", in), Map.of("containerId", in)),
                line("SEEN", in, AT), line("SEEN", in, AT, "site", UUID.randomUUID())))).expect(201);
        assertThat(outcomes(answer)).containsOnly("REFUSED");
        assertThat(texts(answer, "/lines", "code")).containsExactly("PLACE_DISPUTED", "MISSING", "UNKNOWN_CONTAINER",
                "MISSING", "SAME_CONTAINER", "MISSING", "UNKNOWN_SITE");
        assertThat(texts(answer, "/lines", "pointer")).containsExactly("/lines/0/in", "/lines/1/out",
                "/lines/2/in/serial", "/lines/3/in/tag", "/lines/4/in", "/lines/5/site", "/lines/6/site");
        assertThat(answer.at("/lines/2/errors")).hasSize(2);
        assertThat(tables.count("movement") + tables.count("swap") + tables.count("sighting")).isEqualTo(facts);
        refusedToFillers(in);
    }

    private void refusedToFillers(UUID in) {
        Answer answer = scans.send(Role.FILLER, batch(List.of(swap(null, Map.of("containerId", in)),
                line("SEEN", in, AT, "site", truck)))).expect(201);
        assertThat(outcomes(answer)).containsExactly("REFUSED", "RECORDED");
        assertThat(answer.text("/lines/0/code")).isEqualTo("FORBIDDEN");
    }
}
