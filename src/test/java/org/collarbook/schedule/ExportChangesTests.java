package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;

import org.apache.commons.csv.CSVRecord;
import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What has changed since an earlier export, applied to that export's file, gives the later file. */
@RegisterTest
class ExportChangesTests {

    private static final long SEED = 20270101;
    private static final int CONTAINERS = 25;
    private static final int ROUNDS = 6;
    private static final int ACTS = 12;

    private final Api api;
    private final Given given;
    private final TestClock clock;
    private final Exports exports;
    private final Random random = new Random(SEED);
    private final Map<UUID, Map<String, @Nullable Object>> bodies = new HashMap<>();

    ExportChangesTests(Api api, Given given, TestClock clock) {
        this.api = api;
        this.given = given;
        this.clock = clock;
        this.exports = new Exports(api, given);
    }

    private UUID registered(UUID site) {
        var body = Given.cylinder();
        body.put("manufactured", YearMonth.of(2010, 1).plusMonths(random.nextInt(140)).toString());
        var id = given.registered(body);
        bodies.put(id, body);
        given.moved(id, site, clock.instant().minusSeconds(3600).toString());
        return id;
    }

    private void act(List<UUID> of, UUID here, UUID elsewhere) {
        var container = of.get(random.nextInt(of.size()));
        switch (random.nextInt(5)) {
            case 0 -> of.add(registered(here));
            case 1 -> api.as(Role.YARD).post("/api/movements", Map.of("containerId", container, "toSite",
                    random.nextInt(3) > 0 ? elsewhere : here, "occurredAt", clock.instant().toString()));
            case 2 -> api.as(Role.YARD).post("/api/containers/" + container + "/holds", Map.of("reason", "DENTED"));
            case 3 -> {
                var body = new HashMap<>(bodies.get(container));
                body.put("coated", random.nextInt(3) == 0 ? null : random.nextBoolean());
                body.put("reason", "looked at");
                var read = api.as(Role.CLERK).get("/api/containers/" + container);
                api.as(Role.CLERK).ifMatch(read).put("/api/containers/" + container, body);
            }
            default -> clock.set(clock.instant().plusSeconds(86_400L * random.nextInt(60)));
        }
    }

    private static String key(CSVRecord row) {
        return row.get("container_id") + " " + row.get("requirement") + " " + row.get("jurisdiction");
    }

    private static Map<String, List<String>> lines(Answer file) {
        var lines = new TreeMap<String, List<String>>();
        Exports.rows(file).forEach(row -> lines.put(key(row), row.toList()));
        return lines;
    }

    @Test
    void appliedToTheEarlierFileGivesTheLaterOne() {
        System.out.println("seed " + SEED);
        var here = given.site(given.customer());
        var elsewhere = given.site(null);
        var containers = new ArrayList<UUID>();
        for (int i = 0; i < CONTAINERS; i++) {
            containers.add(registered(here));
        }
        var filter = Map.of("site", here, "from", "2018-01");
        var earlier = exports.done(Map.of("filter", filter, "formats", List.of("PLAIN_CSV")));
        var before = lines(exports.file(earlier, "schedule-plain.csv"));
        var seen = new HashSet<String>();
        for (int round = 0; round < ROUNDS; round++) {
            for (int i = 0; i < ACTS; i++) {
                act(containers, here, elsewhere);
            }
            clock.set(clock.instant().plusSeconds(60));
            var since = random.nextBoolean() ? earlier.id() : earlier.text("/manifest/snapshotAt");
            var changes = exports.done(Map.of("filter", filter, "formats", List.of("PLAIN_CSV"), "since", since));
            var later = exports.done(Map.of("filter", filter, "formats", List.of("PLAIN_CSV")));
            var told = Exports.rows(exports.file(changes, "schedule-changes-plain.csv"));
            var after = lines(exports.file(later, "schedule-plain.csv"));
            assertThat(applied(before, told)).as("round %s", round).isEqualTo(after);
            before = after;
            told.forEach(row -> seen.add(row.get("change") + row.get("why")));
            for (var change : Map.of("NEW", "added", "CHANGED", "changed", "REMOVED", "removed").entrySet()) {
                assertThat(told.stream().filter(row -> row.get("change").equals(change.getKey())).count())
                        .isEqualTo(changes.at("/manifest/since/" + change.getValue()).asLong());
            }
            earlier = later;
        }
        assertThat(seen).as("of every kind").containsAll(Set.of("NEW", "CHANGED", "REMOVEDOUT_OF_FILTER",
                "REMOVEDUNDETERMINED"));
    }

    private static Map<String, List<String>> applied(Map<String, List<String>> to, List<CSVRecord> changes) {
        for (var row : changes) {
            var line = row.toList().subList(2, row.size());
            switch (row.get("change")) {
                case "NEW" -> assertThat(to.put(key(row), line)).as("%s was there", line).isNull();
                case "CHANGED" -> assertThat(to.put(key(row), line)).as("was not there, or the same").isNotNull()
                        .isNotEqualTo(line);
                case "REMOVED" -> assertThat(to.remove(key(row))).as("was not there").isNotNull();
                default -> throw new AssertionError(row.toString());
            }
        }
        return to;
    }

    @Test
    void whyOneIsGoneIsTold() {
        var here = given.site(given.customer());
        var absorbed = registered(here);
        var kept = registered(here);
        var moved = registered(here);
        var ask = Map.<String, Object>of("filter", Map.of("site", here), "formats", List.of("CSV"));
        var earlier = exports.done(ask);
        var read = api.as(Role.CLERK).get("/api/containers/" + kept);
        api.as(Role.CLERK).ifMatch(read).post("/api/containers/" + kept + "/merges", Map.of("absorbed", absorbed,
                "setAside", List.of("serial", "manufactured"), "fillWillBeAllowed", true, "reason", "the same one"))
                .expect(201);
        given.moved(moved, given.site(null), "2026-11-25T12:00:00Z");
        var changes = exports.done(Map.of("filter", Map.of("site", here), "formats", List.of("CSV"), "since",
                earlier.id()));
        assertThat(Exports.rows(exports.file(changes, "schedule-changes.csv")))
                .filteredOn(row -> row.get("change").equals("REMOVED"))
                .extracting(row -> row.get("container_id") + " " + row.get("why"))
                .containsExactlyInAnyOrder(absorbed + " MERGED", moved + " OUT_OF_FILTER");
    }

    @Test
    void ofAnotherFilterOrForAnotherFormIsRefused() {
        var here = given.site(given.customer());
        var earlier = exports.done(Map.of("filter", Map.of("site", here), "formats", List.of("CSV")));
        var clerk = api.as(Role.CLERK);
        assertThat(clerk.post("/api/schedule-exports", Map.of("formats", List.of("CSV"), "since", earlier.id()))
                .expectProblem(400, "INVALID_INPUT").errors()).containsExactly(Map.entry("/since", "ANOTHER_FILTER"));
        assertThat(clerk.post("/api/schedule-exports", Map.of("filter", Map.of("site", here), "formats",
                List.of("XLSX"), "since", earlier.id())).expectProblem(400, "INVALID_INPUT").errors())
                .containsExactly(Map.entry("/formats", "NOT_FOR_CHANGES"));
        assertThat(clerk.post("/api/schedule-exports", Map.of("filter", Map.of("site", here), "formats",
                List.of("CSV"), "files", "YEAR", "asOf", "2026-11-01", "since", earlier.id()))
                .expectProblem(400, "INVALID_INPUT").errors()).containsEntry("/since", "NOT_OF_ANOTHER_DAY")
                .containsEntry("/files", "NOT_FOR_CHANGES");
    }
}
