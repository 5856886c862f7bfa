package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
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
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** A merge never allows a fill unseen, whatever the two records say; undone, both answer as before. */
@RegisterTest
class MergedFillsTests {

    private static final long SEED = Long.getLong("seed", System.nanoTime());
    private static final int PAIRS = Integer.getInteger("merged.pairs", 40);
    private static final Caller YARD = new Caller(UUID.randomUUID(), "yard", Set.of(Role.YARD), CustomerScope.EVERYONE);
    private static final List<String> REASONS = List.of("DENTED", "LOST", "VALVE_DEFECT", "IDENTITY_DISPUTED");

    private final Api.Session clerk;
    private final Given given;
    private final Requalifications requalifications;
    private final Fills fills;
    private final Tables tables;
    private final TestClock clock;
    private final Random random = new Random(SEED);

    MergedFillsTests(Api api, Given given, Requalifications requalifications, Fills fills, Tables tables,
            TestClock clock) {
        this.clerk = api.as(Role.CLERK);
        this.given = given;
        this.requalifications = requalifications;
        this.fills = fills;
        this.tables = tables;
        this.clock = clock;
    }

    private boolean oneIn(int many) {
        return random.nextInt(many) == 0;
    }

    private UUID container(UUID site) {
        Map<String, @Nullable Object> body = Given.cylinder();
        body.put("manufactured", oneIn(4) ? "5-04" : "5-20");
        for (var field : List.of("owned", "coated", "marksLegible", "service", "collarRead")) {
            if (oneIn(10)) {
                body.remove(field);
            }
        }
        var id = given.registered(body);
        if (!oneIn(8)) {
            given.moved(id, site, "2026-11-20T09:00:00Z");
        }
        for (int i = random.nextInt(3); i > 0; i--) {
            var result = oneIn(8) ? Result.CONDEMNED : oneIn(8) ? Result.REJECTED : Result.PASSED;
            var month = YearMonth.of(2021 + random.nextInt(5), 1 + random.nextInt(12));
            if (requalifications.of(List.of(id)).getOrDefault(id, List.of()).stream()
                    .noneMatch(done -> done.month().equals(month))) {
                requalifications.append(new RequalificationEntry(id, new Requalification(month,
                        Method.VOLUMETRIC_EXPANSION, false, false, oneIn(6) ? null : Rin.parse("A123"), false, result),
                        null, null), YARD);
            }
        }
        if (oneIn(5)) {
            clerk.post("/api/containers/" + id + "/holds", Map.of("reason", REASONS.get(random.nextInt(4))));
        }
        if (oneIn(2)) {
            fills.record(new Fill(id, LocalDate.of(2026, 1 + random.nextInt(10), 3), null), YARD);
        }
        return id;
    }

    private Answer assessed(UUID id) {
        return clerk.get("/api/containers/" + id + "/assessment").expect(200);
    }

    private static boolean mayFill(Answer assessed) {
        return assessed.at("/mayFill").booleanValue();
    }

    private long standing(UUID id) {
        return clerk.get("/api/containers/" + id + "/holds?standing=true").expect(200).at("/items").size();
    }

    private boolean isCondemned(UUID id) {
        return requalifications.of(List.of(id)).getOrDefault(id, List.of()).stream()
                .anyMatch(done -> done.result() == Result.CONDEMNED);
    }

    @Test
    void noMergeAllowsAFillUnseen() {
        System.out.println("seed " + SEED);
        var site = given.site(null);
        var outcomes = new HashMap<String, Integer>();
        for (int i = 0; i < PAIRS; i++) {
            outcomes.merge(pair(container(site), container(site)), 1, Integer::sum);
        }
        System.out.println("merged " + outcomes);
        assertThat(outcomes.keySet()).as("seed %d: each kind of pair was met", SEED)
                .contains("REFUSED", "CONFIRMED");
    }

    private String pair(UUID kept, UUID other) {
        var before = List.of(assessed(kept), assessed(other));
        long holds = standing(kept) + standing(other);
        boolean condemned = isCondemned(kept) || isCondemned(other);
        boolean bothAllowed = before.stream().allMatch(MergedFillsTests::mayFill);
        var read = clerk.get("/api/containers/" + kept);
        var path = "/api/containers/" + kept + "/merges";
        var request = new LinkedHashMap<String, Object>(Map.of("absorbed", other, "reason", "one cylinder"));
        request.put("setAside", contradictions(read, path, request));
        var merged = clerk.ifMatch(read).post(path, request);
        var outcome = "ALLOWED";
        if (merged.status() == 409) {
            tables.unchangedBy(() -> clerk.ifMatch(read).post(path, request)
                    .expectProblem(409, "FILL_WOULD_BE_ALLOWED"));
            assertThat(bothAllowed).as("seed %d", SEED).isFalse();
            request.put("fillWillBeAllowed", true);
            merged = clerk.ifMatch(read).post(path, request).expect(201);
            assertThat(merged.at("/fillWasRefusedFor")).isNotEmpty();
            assertThat(mayFill(assessed(kept))).isTrue();
            outcome = "CONFIRMED";
        } else {
            merged.expect(201);
            assertThat(mayFill(assessed(kept))).as("seed %d, %s and %s", SEED, kept, other)
                    .isEqualTo(mayFill(assessed(kept)) && bothAllowed);
            outcome = mayFill(assessed(kept)) ? "ALLOWED" : "REFUSED";
        }
        // a passed test may have lifted neither
        assertThat(standing(kept)).as("seed %d", SEED).isEqualTo(holds);
        if (holds > 0 || condemned) {
            assertThat(mayFill(assessed(kept))).as("seed %d, %s and %s", SEED, kept, other).isFalse();
        }
        if (condemned) {
            assertThat(assessed(kept).text("/status")).isEqualTo("CONDEMNED");
        }
        clerk.post("/api/identity-acts/" + merged.id() + "/undo", Map.of("reason", "two", "fillWillBeAllowed", true))
                .expect(200);
        assertThat(assessed(kept).json()).as("seed %d", SEED).isEqualTo(before.getFirst().json());
        assertThat(assessed(other).json()).as("seed %d", SEED).isEqualTo(before.getLast().json());
        for (var id : List.of(kept, other)) {
            assertThat(clerk.get("/api/audit/verification?container=" + id).at("/broken")).isEmpty();
        }
        return outcome;
    }

    private List<String> contradictions(Answer read, String path, Map<String, Object> request) {
        return clerk.ifMatch(read).post(path, request).expectProblem(409, "MARKS_CONTRADICT").at("/contradictions")
                .findValuesAsString("field");
    }

    /** What was known before the merge, after it and after it was undone, is answered for each of these moments. */
    @Test
    void aReplayTellsEachTimeAsItWas() {
        var site = given.site(null);
        var start = clock.instant();
        var ids = new ArrayList<UUID>();
        for (int i = 0; i < 2; i++) {
            var body = Given.cylinder();
            body.remove("collarRead");
            ids.add(given.registered(body));
            given.moved(ids.get(i), site, "2026-11-20T09:00:00Z");
        }
        requalifications.append(new RequalificationEntry(ids.getLast(), new Requalification(YearMonth.of(2022, 5),
                Method.VOLUMETRIC_EXPANSION, false, false, Rin.parse("A123"), false, Result.PASSED), null, null),
                YARD);
        var path = "/api/containers/" + ids.getFirst();
        clock.set(start.plusSeconds(60));
        var act = clerk.ifMatch(clerk.get(path)).post(path + "/merges", Map.of("absorbed", ids.getLast(), "setAside",
                List.of("serial"), "fillWillBeAllowed", true, "reason", "one cylinder")).expect(201);
        clock.set(start.plusSeconds(120));
        clerk.post("/api/identity-acts/" + act.id() + "/undo", Map.of("reason", "two", "fillWillBeAllowed", true))
                .expect(200);
        clock.set(start.plusSeconds(180));

        assertThat(then(ids.getFirst(), start.plusSeconds(30).toString()).text("/status")).isEqualTo("UNDETERMINED");
        assertThat(then(ids.getLast(), start.plusSeconds(30).toString()).text("/status")).isEqualTo("IN_DATE");
        assertThat(then(ids.getFirst(), start.plusSeconds(90).toString()).text("/status")).isEqualTo("IN_DATE");
        then(ids.getLast(), start.plusSeconds(90).toString(), 404);
        assertThat(then(ids.getFirst(), start.plusSeconds(150).toString()).text("/status")).isEqualTo("UNDETERMINED");
        assertThat(then(ids.getLast(), start.plusSeconds(150).toString()).text("/status")).isEqualTo("IN_DATE");
    }

    private Answer then(UUID id, String moment) {
        return then(id, moment, 200);
    }

    private Answer then(UUID id, String moment, int status) {
        return clerk.get("/api/containers/" + id + "/assessment?knownAt=" + moment).expect(status);
    }
}
