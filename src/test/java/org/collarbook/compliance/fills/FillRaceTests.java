package org.collarbook.compliance.fills;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.inspection.Requalifications;
import org.collarbook.regulation.Requalification;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Fills that race a hold, a rejection, and one another: once the other is committed, no fill is accepted. */
@RegisterTest
class FillRaceTests {

    private static final int FEW = 200;
    private static final int STATED = 1_000;
    private static final int THREADS = 16;
    private static final Caller YARD = new Caller(UUID.randomUUID(), "yard", Set.of(Role.YARD),
            CustomerScope.EVERYONE);

    private final Api api;
    private final Given given;
    private final Requalifications requalifications;
    private final JdbcClient jdbc;
    private final Tables tables;
    private final AtomicLong number = new AtomicLong();

    FillRaceTests(Api api, Given given, Requalifications requalifications, JdbcClient jdbc, Tables tables) {
        this.api = api;
        this.given = given;
        this.requalifications = requalifications;
        this.jdbc = jdbc;
        this.tables = tables;
    }

    private UUID inDate() {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        var id = given.registered(body);
        given.moved(id, given.site(given.customer()), "2026-11-20T09:00:00Z");
        return id;
    }

    /** Whether a fill was accepted, and when it was asked for. */
    private record Asked(UUID container, long sentAt, Answer answer) {}

    private Asked fill(UUID container) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("containerId", container);
        // one moment each, all of them past
        body.put("filledAt", Instant.parse("2026-11-25T08:00:00Z").plusMillis(number.incrementAndGet()).toString());
        body.put("specificGravity", 0.508);
        body.put("netAfterLb", 19);
        body.put("lookedAt", true);
        long sent = System.nanoTime();
        return new Asked(container, sent, api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString())
                .post("/api/fills", body));
    }

    /** Runs the fills with the interruptions among them; the moments at which each interruption had been answered. */
    private Map<UUID, Long> race(int requests, List<UUID> containers, List<Asked> fills, Callable<?> interruption)
            throws Exception {
        var answered = new ConcurrentHashMap<UUID, Long>();
        var third = new CountDownLatch(requests / 3);
        var tasks = new ArrayList<Callable<Asked>>();
        for (int i = 0; i < requests; i++) {
            var container = containers.get(i % containers.size());
            tasks.add(() -> {
                var asked = fill(container);
                third.countDown();
                return asked;
            });
        }
        try (var threads = Executors.newFixedThreadPool(THREADS)) {
            var interrupted = threads.submit(() -> {
                third.await();
                interruption.call();
                containers.forEach(container -> answered.put(container, System.nanoTime()));
                return null;
            });
            for (var future : threads.invokeAll(tasks)) {
                fills.add(future.get());
            }
            interrupted.get();
            containers.forEach(container -> fills.add(fill(container)));
        }
        return answered;
    }

    private void noneAcceptedAfter(Map<UUID, Long> answered, List<Asked> fills, String code) {
        assertThat(fills).isNotEmpty().allMatch(fill -> fill.answer.status() == 201
                || fill.answer.status() == 409 && fill.answer.text("/code").equals("FILL_REFUSED"));
        var late = fills.stream().filter(fill -> fill.sentAt > answered.get(fill.container)).toList();
        assertThat(late).as("requests sent after the other was answered").isNotEmpty()
                .allSatisfy(fill -> assertThat(fill.answer.expectProblem(409, "FILL_REFUSED").body()).contains(code));
        assertThat(fills.stream().filter(fill -> fill.answer.status() == 201)).as("accepted before").isNotEmpty();
    }

    /** What was accepted is there, what was refused left nothing; and each accepted fill was committed before. */
    private void onlyTheAcceptedAreThere(List<UUID> containers, List<Asked> fills) {
        for (var container : containers) {
            long accepted = fills.stream()
                    .filter(fill -> fill.container.equals(container) && fill.answer.status() == 201).count();
            assertThat(jdbc.sql("select count(*) from fill where container_id = ?").param(container).query(Long.class)
                    .single()).isEqualTo(accepted);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 7})
    void neverAfterAHold(int howMany) throws Exception {
        raceAHold(FEW, howMany);
    }

    @Tag("full")
    @ParameterizedTest
    @ValueSource(ints = {1, 7})
    void neverAfterAHoldOfAThousand(int howMany) throws Exception {
        raceAHold(STATED, howMany);
    }

    private void raceAHold(int requests, int howMany) throws Exception {
        var containers = IntStream.range(0, howMany).mapToObj(i -> inDate()).toList();
        var fills = new ArrayList<Asked>();
        var answered = race(requests, containers, fills, () -> {
            containers.forEach(container -> api.as(Role.YARD).post("/api/containers/" + container + "/holds",
                    Map.of("reason", "LEAKING", "occurredAt", "2026-11-25T10:00:00Z")).expect(201));
            return null;
        });
        noneAcceptedAfter(answered, fills, "ON_HOLD");
        onlyTheAcceptedAreThere(containers, fills);
        // identifiers carry the time and are given out while the container is locked
        for (var container : containers) {
            assertThat(jdbc.sql("select count(*) from fill f join hold h using (container_id) where container_id = ?"
                    + " and f.id > h.id").param(container).query(Long.class).single()).isZero();
        }
    }

    @Test
    void neverAfterARejection() throws Exception {
        raceARejection(FEW);
    }

    @Tag("full")
    @Test
    void neverAfterARejectionOfAThousand() throws Exception {
        raceARejection(STATED);
    }

    private void raceARejection(int requests) throws Exception {
        var containers = List.of(inDate(), inDate(), inDate());
        var fills = new ArrayList<Asked>();
        var answered = race(requests, containers, fills, () -> {
            containers.forEach(container -> requalifications.append(new RequalificationEntry(container,
                    new Requalification(YearMonth.from(TestClock.TODAY), null, false, false, null, false,
                            Requalification.Result.REJECTED),
                    null, null), YARD));
            return null;
        });
        noneAcceptedAfter(answered, fills, "REJECTED");
        onlyTheAcceptedAreThere(containers, fills);
    }

    @Test
    void refusalsLeaveNothing() throws Exception {
        var body = Given.cylinder();
        var overdue = given.registered(body);
        given.moved(overdue, given.site(given.customer()), "2026-11-20T09:00:00Z");
        var before = tables.counts();
        var tasks = new ArrayList<Callable<Asked>>();
        for (int i = 0; i < FEW; i++) {
            tasks.add(() -> fill(overdue));
        }
        try (var threads = Executors.newFixedThreadPool(THREADS)) {
            for (var future : threads.invokeAll(tasks)) {
                future.get().answer.expectProblem(409, "FILL_REFUSED");
            }
        }
        assertThat(tables.counts()).isEqualTo(before);
    }
}
