package org.collarbook.intake.scans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.intake.scans.Scans.batch;
import static org.collarbook.intake.scans.Scans.fill;
import static org.collarbook.intake.scans.Scans.line;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.Semaphore;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

import org.collarbook.access.Role;
import org.collarbook.inspection.Sheets;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Holds, lifts, fills, batches and requalifications of a few containers, all at once. */
@RegisterTest
class ScanRaceTests {

    private static final int FEW = 200;
    private static final int STATED = 1_000;
    private static final int CONTAINERS = 5;
    /** More than the pool has connections; not so many that a slow machine keeps one waiting for longer than it may. */
    private static final int IN_FLIGHT = 24;
    /** Before every fill, so that none of them was made before a hold. */
    private static final String HELD = "2026-11-25T07:00:00Z";

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;
    private final Scans scans;
    private final AtomicInteger moment = new AtomicInteger();

    ScanRaceTests(Api api, Given given, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
        this.scans = new Scans(api);
    }

    @Test
    void noFillIsAcceptedAfterAHold() throws Exception {
        race(FEW);
    }

    @Tag("full")
    @Test
    void noFillIsAcceptedAfterAHoldOfAThousand() throws Exception {
        race(STATED);
    }

    private void race(int requests) throws Exception {
        var depot = given.site(null);
        var containers = IntStream.range(0, CONTAINERS).mapToObj(i -> inDate(depot)).toList();
        var rin = Sheets.approved(api);
        var inFlight = new Semaphore(IN_FLIGHT);
        var early = new CountDownLatch(requests / 5);
        var tasks = new ArrayList<Callable<Answer>>();
        for (int i = 0; i < requests; i++) {
            var id = containers.get(i % CONTAINERS);
            int what = i / CONTAINERS % 10;
            boolean first = List.of(0, 3, 6, 8).contains(what);
            tasks.add(() -> {
                if (!first) {
                    // what holds joins in when a good part of the fills are in
                    early.await();
                }
                inFlight.acquire();
                try {
                    return task(what, id, depot, rin).call();
                } finally {
                    inFlight.release();
                    early.countDown();
                }
            });
        }
        var answers = new ArrayList<Answer>();
        try (var threads = Executors.newVirtualThreadPerTaskExecutor()) {
            for (var future : threads.invokeAll(tasks)) {
                answers.add(future.get());
            }
        }
        assertThat(answers).hasSize(requests).allMatch(answer -> List.of(200, 201, 409).contains(answer.status()),
                "is recorded or refused");
        assertThat(answers.stream().filter(answer -> answer.status() == 409)
                .allMatch(answer -> List.of("FILL_REFUSED", "ALREADY_RECORDED", "ALREADY_LIFTED")
                        .contains(answer.text("/code"))))
                .isTrue();
        containers.forEach(this::noneAfterAHold);
        eachFactOnce(containers, answers);
    }

    private Callable<Answer> task(int what, UUID id, UUID depot, String rin) {
        return switch (what) {
            case 1, 4 ->
                () -> api.as(Role.YARD).post("/api/containers/" + id + "/holds", Map.of("reason", "VALVE_DEFECT",
                        "occurredAt", HELD));
            case 2, 7 -> () -> lift(id);
            case 5 -> () -> api.as(Role.YARD).post("/api/containers/" + id + "/requalifications", proof(rin));
            case 3, 8 -> () -> scans.send(Role.YARD, batch(List.of(fill(id, next()),
                    line("MOVEMENT", id, next(), "toSite", depot), fill(id, next()))));
            case 9 -> () -> scans.send(Role.YARD, batch(List.of(fill(id, next()),
                    line("HOLD", id, HELD, "reason", "VALVE_DEFECT"))));
            default -> () -> api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString())
                    .post("/api/fills", posted(id));
        };
    }

    private String next() {
        return Instant.parse("2026-11-25T08:00:00Z").plusMillis(moment.incrementAndGet()).toString();
    }

    private Map<String, @Nullable Object> posted(UUID id) {
        return new LinkedHashMap<>(Map.of("containerId", id, "filledAt", next(), "specificGravity", 0.508, "netAfterLb",
                19, "lookedAt", true));
    }

    private Answer lift(UUID id) {
        var standing = api.as(Role.YARD).get("/api/containers/" + id + "/holds?standing=true&size=1").expect(200);
        return standing.at("/items").isEmpty()
                ? standing
                : api.as(Role.YARD).post("/api/holds/" + standing.text("/items/0/id") + "/lifts", Map.of("by",
                        "COMPETENT_PERSON", "name", "A. Looker", "qualification", "trained employee"));
    }

    private UUID inDate(UUID depot) {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        var id = given.registered(body);
        given.moved(id, depot, "2026-11-01T09:00:00Z");
        return id;
    }

    private static Map<String, Object> proof(String rin) {
        return Map.of("performedOn", "2026-11-25", "method", "PROOF_PRESSURE", "requalifier", rin, "operator",
                "M. Holt",
                "markedPressurePsig", 240, "testPressurePsig", 480, "visual", Map.of("items",
                        List.of(Map.of("item", "CORROSION", "finding", "SATISFACTORY"),
                                Map.of("item", "DENTS", "finding", "SATISFACTORY"),
                                Map.of("item", "FIRE_DAMAGE", "finding", "NOT_APPLICABLE"))));
    }

    /** When it was recorded, while the container was locked: the first 48 bits of an id, RFC 9562, version 7. */
    private static long millisecond(UUID id) {
        return id.getMostSignificantBits() >>> 16;
    }

    private record Hold(UUID id, Instant at, @Nullable UUID lift) {}

    private record Fill(UUID id, Instant at, boolean told, boolean flagged) {}

    private void noneAfterAHold(UUID container) {
        var holds = jdbc
                .sql("select h.id, h.occurred_at at, l.id lift from hold h left join hold_lift l on l.hold_id = h.id"
                        + " where container_id = ?")
                .param(container).query(Hold.class).list();
        var fills = jdbc.sql("select id, filled_at at, told_afterwards told, refused_for <> '{}' flagged from fill"
                + " where container_id = ?").param(container).query(Fill.class).list();
        assertThat(holds).isNotEmpty();
        assertThat(fills).anyMatch(Fill::flagged).anyMatch(fill -> !fill.flagged);
        for (var fill : fills) {
            for (var hold : holds) {
                boolean stood = millisecond(hold.id) < millisecond(fill.id)
                        && (hold.lift == null || millisecond(hold.lift) > millisecond(fill.id));
                // one told afterwards is judged at its own moment, which a hold for another fill may be later than
                boolean before = fill.told && fill.at.isBefore(hold.at);
                assertThat(fill.flagged || !stood || before).as(fill + " after " + hold).isTrue();
            }
        }
        var audit = api.as(Role.CLERK).get("/api/audit/verification?container=" + container).expect(200);
        assertThat(audit.at("/whole").asBoolean()).as(audit.body()).isTrue();
    }

    /** What was answered is there, once, and nothing else. */
    private void eachFactOnce(List<UUID> containers, List<Answer> answers) {
        var fills = new ArrayList<String>();
        var holds = new ArrayList<String>();
        for (var answer : answers) {
            if (answer.status() == 201 && !answer.at("/netAfterLb").isMissingNode()) {
                fills.add(answer.id());
            } else if (answer.status() == 201 && !answer.at("/hold").isMissingNode()) {
                holds.add(answer.text("/hold/id"));
            }
            answer.at("/lines").forEach(one -> {
                assertThat(one.path("outcome").asString()).startsWith("RECORDED");
                if (one.has("fillId")) {
                    fills.add(one.path("fillId").asString());
                }
                if (one.has("holdId")) {
                    holds.add(one.path("holdId").asString());
                }
            });
        }
        assertThat(ids("fill", containers)).containsExactlyInAnyOrderElementsOf(fills);
        assertThat(ids("hold", containers)).containsExactlyInAnyOrderElementsOf(holds);
        assertThat(jdbc.sql("select count(*) from requalification where container_id = any (?)")
                .param(containers.toArray(UUID[]::new)).query(Long.class).single())
                .as("one of the racing records of the same test").isEqualTo(CONTAINERS);
    }

    private List<String> ids(String table, List<UUID> containers) {
        return jdbc.sql("select id::text from " + table + " where container_id = any (?)")
                .param(containers.toArray(UUID[]::new)).query(String.class).list();
    }
}
