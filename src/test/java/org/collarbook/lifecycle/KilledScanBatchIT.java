package org.collarbook.lifecycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.concurrent.CompletableFuture;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The packaged jar, killed in the middle of a batch of 10,000 lines: sent again, nothing is lost and nothing is there twice. */
class KilledScanBatchIT {

    private static final int LINES = 10_000;
    private static final int CONTAINERS = 250;
    private static final int KILLED_AFTER = 1_000;
    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final Instant START = Instant.parse("2025-03-01T06:00:00Z");
    private static final String BATCHES = "/api/scan-batches";
    private static final String CONTAINER = """
            {"kind":"CYLINDER","specification":"DOT-4BA240","maker":"QX","serial":"K%d","tag":"K-%d","manufactured":"6-20",
            "waterCapacity":"47.6 lb","tare":"TW 17.0","coated":true,"owned":true,"marksLegible":true,"collarRead":true,
            "service":{"lading":"LPG","exclusive":true,"corrosionFree":true}}""";

    @TempDir
    private Path folder;
    private String key = "";

    @Test
    void killedInTheMiddleOfABatch() throws Exception {
        List<String> containers;
        String batch;
        try (var first = RunningJar.start(folder).awaitUp()) {
            key = first.printedKey().orElseThrow();
            var site = created(first, "/api/sites", """
                    {"code":"D1","name":"Depot","kind":"DEPOT","zone":"America/Chicago","jurisdiction":"US"}""");
            containers = new ArrayList<>();
            for (int i = 0; i < CONTAINERS; i++) {
                containers.add(created(first, "/api/containers", CONTAINER.formatted(i, i)));
            }
            batch = batch(site);
            var sent = CompletableFuture.supplyAsync(() -> send(first, batch));
            for (long recorded = 0; recorded < KILLED_AFTER; recorded = recorded(first)) {
                assertThat(sent).as("the batch was over before the service was killed").isNotDone();
                Thread.sleep(50);
            }
            first.kill();
            assertThat(sent).as("no answer came").failsWithin(Duration.ofMinutes(2));
        }
        try (var second = RunningJar.start(folder).awaitUp()) {
            long before = recorded(second);
            assertThat(before).isBetween((long) KILLED_AFTER, LINES - 1L);
            var counts = JSON.readTree(send(second, batch)).path("counts");
            assertThat(counts.path("repeated").asLong()).as("what had been settled").isEqualTo(before);
            assertThat(counts.path("recorded").asLong() + counts.path("recordedNotAllowed").asLong())
                    .as("nothing is lost").isEqualTo(LINES - before);
            eachOnce(second, containers);
            var again = JSON.readTree(send(second, batch)).path("counts");
            assertThat(again.path("repeated").asLong()).isEqualTo(LINES);
            eachOnce(second, containers);
        }
    }

    private String created(RunningJar service, String path, String json) throws Exception {
        var answer = service.post(path, key, json);
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(201);
        return JSON.readTree(answer.body()).path("id").asString();
    }

    /** Every kind, out of order; a tenth of the fills are too much. */
    private static String batch(String site) {
        var lines = new ArrayList<String>();
        for (int i = 0; i < LINES; i++) {
            int one = (i * 7_919) % LINES;
            var fields = switch (one / CONTAINERS % 4) {
                case 0 -> "\"kind\":\"RETURN\",\"toSite\":\"" + site + "\",\"empty\":true";
                case 1 -> "\"kind\":\"FILL\",\"specificGravity\":0.508,\"lookedAt\":true,\"netAfterLb\":"
                        + (one % 10 == 0 ? 21 : 19);
                case 2 -> "\"kind\":\"MOVEMENT\",\"toSite\":\"" + site + "\"";
                default -> "\"kind\":\"HOLD\",\"reason\":\"DENTED\"";
            };
            lines.add("{\"id\":\"L" + one + "\",\"occurredAt\":\"" + START.plusSeconds(60L * one) + "\",\"tag\":\"K-"
                    + one % CONTAINERS + "\"," + fields + "}");
        }
        return "{\"batchId\":\"truck 7\",\"lines\":[" + String.join(",", lines) + "]}";
    }

    private String send(RunningJar service, String batch) {
        try {
            var answer = service.postOnce(BATCHES, key, "truck-7", batch);
            assertThat(answer.statusCode()).as(answer.body()).isBetween(200, 201);
            return answer.body();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private JsonNode get(RunningJar service, String path) throws Exception {
        return JSON.readTree(service.get(path, key).body());
    }

    private long recorded(RunningJar service) throws Exception {
        var counts = get(service, BATCHES + "/truck%207?size=1").path("counts");
        return counts.path("recorded").asLong() + counts.path("recordedNotAllowed").asLong();
    }

    private void eachOnce(RunningJar service, List<String> containers) throws Exception {
        var ids = new HashSet<String>();
        var facts = new HashSet<String>();
        var cursor = "";
        do {
            var page = get(service, BATCHES + "/truck%207?size=1000&cursor=" + cursor);
            page.path("items").forEach(line -> {
                ids.add(line.path("id").asString());
                facts.add(line.path(line.has("fillId") ? "fillId" : line.has("movementId") ? "movementId" : "holdId")
                        .asString());
            });
            cursor = page.path("next").asString("");
        } while (!cursor.isEmpty());
        assertThat(ids).hasSize(LINES);
        assertThat(facts).hasSize(LINES);
        int each = LINES / CONTAINERS / 4;
        int held = 0;
        for (var container : containers) {
            var path = "/api/containers/" + container;
            assertThat(get(service, path + "/fills").path("items")).hasSize(each);
            assertThat(get(service, path + "/movements").path("items")).hasSize(2 * each);
            held += get(service, path + "/holds?size=1000").path("items").size();
        }
        var counts = get(service, BATCHES + "/truck%207?size=1").path("counts");
        assertThat(held).as("told holds, and one for each fill that was not allowed")
                .isEqualTo(LINES / 4 + counts.path("recordedNotAllowed").asInt());
        assertThat(counts.path("refused").asInt()).isZero();
        assertThat(get(service, "/api/audit/verification?size=1000").path("whole").asBoolean()).isTrue();
    }
}
