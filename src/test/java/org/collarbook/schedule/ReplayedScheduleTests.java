package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;

import org.apache.commons.csv.CSVFormat;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The schedule of another day, and as it was known: held against the replay of each single container. */
@RegisterTest
class ReplayedScheduleTests {

    private static final long SEED = 20261201;
    private static final int CONTAINERS = 30;
    private static final int ACTS = 60;
    private static final Instant FIRST = Instant.parse("2026-03-02T15:00:00Z");

    private final Api api;
    private final Given given;
    private final TestClock clock;
    private final Tables tables;
    private final Random random = new Random(SEED);
    private final List<UUID> sites = new ArrayList<>();
    private final List<UUID> containers = new ArrayList<>();
    private final Map<UUID, Map<String, @Nullable Object>> bodies = new HashMap<>();
    private final List<Moved> moves = new ArrayList<>();
    private final List<Instant> moments = new ArrayList<>();

    ReplayedScheduleTests(Api api, Given given, TestClock clock, Tables tables) {
        this.api = api;
        this.given = given;
        this.clock = clock;
        this.tables = tables;
    }

    private final String rin = "Y%03d".formatted(ProcessHandle.current().pid() % 1000);

    private record Moved(UUID container, UUID site, Instant at, Instant recordedAt) {}

    private void move(UUID container, UUID site) {
        var at = clock.instant().minusSeconds(3600L * (1 + random.nextInt(24 * 20)));
        if (moves.stream().anyMatch(made -> made.container.equals(container) && !made.at.isBefore(at))) {
            return;
        }
        given.moved(container, site, at.toString());
        moves.add(new Moved(container, site, at, clock.instant()));
    }

    private void register() {
        var body = Given.cylinder();
        body.put("manufactured", YearMonth.of(2003, 1).plusMonths(random.nextInt(12 * 20)).toString());
        body.put("coated", random.nextInt(4) == 0 ? null : random.nextBoolean());
        var id = given.registered(body);
        bodies.put(id, body);
        containers.add(id);
        move(id, pick(sites));
    }

    private <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }

    /** Registered and acted on at moments of which each is some days after the one before. */
    private void lives() {
        clock.set(FIRST);
        var customer = given.customer();
        api.as(Role.CLERK).post("/api/requalifiers", Map.of("rin", rin, "name", "Bench", "approval",
                Map.of("from", "2022-01-01", "expires", "2028-01-01"))).expect(201);
        sites.addAll(List.of(given.site(customer), given.site(customer), given.site(null)));
        for (int i = 0; i < CONTAINERS + ACTS; i++) {
            clock.set(FIRST.plusSeconds(3600L * 64 * i + random.nextInt(3600)));
            if (i < CONTAINERS) {
                register();
            } else {
                act(pick(containers));
            }
            moments.add(clock.instant());
        }
    }

    private void act(UUID container) {
        var today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        switch (random.nextInt(5)) {
            case 0 -> move(container, pick(sites));
            case 1 -> api.as(Role.YARD).post("/api/containers/" + container + "/holds",
                    Map.of("reason", "DENTED", "occurredAt", today.minusDays(random.nextInt(30)) + "T09:00:00Z"));
            case 2 -> api.as(Role.YARD).post("/api/containers/" + container + "/requalifications", Map.of("performedOn",
                    today.minusDays(random.nextInt(20)).toString(), "method", "EXTERNAL_VISUAL", "requalifier", rin,
                    "operator", "M. Holt", "coating", "sound", "owner", "Owner and Sons", "visual", Map.of("items",
                            List.of(Map.of("item", "CORROSION", "finding", "SATISFACTORY")))))
                    .expect(201);
            case 3 -> correct(container);
            default -> api.as(Role.FILLER).post("/api/containers/" + container + "/emptyings",
                    Map.of("emptiedAt", today.minusDays(1 + random.nextInt(9)) + "T09:00:00Z", "how", "came back"));
        }
    }

    private void correct(UUID container) {
        var read = api.as(Role.CLERK).get("/api/containers/" + container);
        var body = bodies.get(container);
        body.put("coated", random.nextBoolean());
        body.put("reason", "looked at");
        api.as(Role.CLERK).ifMatch(read).put("/api/containers/" + container, body);
    }

    private @Nullable UUID stoodAt(UUID container, LocalDate day, Instant knownAt) {
        var ended = day.plusDays(1).atTime(12, 0).toInstant(ZoneOffset.UTC);
        return moves.stream().filter(made -> made.container.equals(container) && made.at.isBefore(ended)
                && !made.recordedAt.isAfter(knownAt)).max(Comparator.comparing(Moved::at)).map(Moved::site)
                .orElse(null);
    }

    private Set<String> singly(UUID site, LocalDate day, Instant knownAt) {
        var lines = new HashSet<String>();
        for (var id : containers) {
            if (!site.equals(stoodAt(id, day, knownAt))) {
                continue;
            }
            var told = api.as(Role.CLERK).get("/api/containers/" + id + "/assessment?on=" + day + "&knownAt=" + knownAt)
                    .expect(200);
            told.at("/requirements").forEach(one -> {
                if (one.has("due")) {
                    lines.add(String.join(" ", id.toString(), one.path("requirement").asString(),
                            one.path("due").asString(), told.text("/status"), one.path("rule").asString()));
                }
            });
        }
        return lines;
    }

    private Set<String> listed(UUID site, LocalDate day, Instant knownAt) throws IOException {
        var lines = new HashSet<String>();
        var file = api.as(Role.CLERK)
                .get("/api/schedule?format=csv&site=" + site + "&asOf=" + day + "&knownAt=" + knownAt).expect(200);
        for (var row : CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get()
                .parse(new StringReader(file.body())).getRecords()) {
            lines.add(String.join(" ", row.get("container_id"), row.get("requirement"), row.get("due"),
                    row.get("status"), row.get("rule")));
        }
        return lines;
    }

    @Test
    void isContainerByContainerTheSingleReplay() throws IOException {
        System.out.println("seed " + SEED);
        lives();
        var statuses = new HashSet<String>();
        int compared = 0;
        for (int i = 0; i < 8; i++) {
            var knownAt = moments.get(CONTAINERS / 2 + random.nextInt(moments.size() - CONTAINERS / 2));
            var day = LocalDate.ofInstant(knownAt, ZoneOffset.UTC).plusDays(random.nextInt(900) - 200);
            for (var site : sites) {
                var listed = listed(site, day, knownAt);
                assertThat(listed).as("seed %s: %s on %s as known at %s", SEED, site, day, knownAt)
                        .isEqualTo(singly(site, day, knownAt));
                listed.forEach(line -> statuses.add(line.split(" ")[3]));
                compared += listed.size();
            }
        }
        System.out.println(compared + " lines compared, " + statuses);
        assertThat(compared).isGreaterThan(CONTAINERS);
        assertThat(statuses).contains("OVERDUE", "IN_DATE", "ON_HOLD");
    }

    /** Manufactured in May 2004 and coated, it was due in May 2016: 49 CFR 180.209(e), twelve years. */
    @Test
    void countsPagesAndSheetsSayTheSame() throws IOException {
        var site = given.site(given.customer());
        given.moved(given.registered(), site, "2026-11-20T09:00:00Z");
        var before = "&site=" + site + "&asOf=2026-11-21";
        assertThat(api.as(Role.CLERK).get("/api/schedule?" + before).expect(200).text("/items/0/status"))
                .isEqualTo("OVERDUE");
        assertThat(api.as(Role.CLERK).get("/api/schedule/summary?" + before).expect(200).at("/months/0").toString())
                .isEqualTo("{\"due\":\"2016-05\",\"count\":1,\"statuses\":{\"OVERDUE\":1}}");
        assertThat(api.as(Role.CLERK).get("/api/schedule?site=" + site + "&asOf=2016-05-31").expect(200).at("/items"))
                .as("it was not there yet").isEmpty();
        try (var workbook = new XSSFWorkbook(new ByteArrayInputStream(
                api.as(Role.CLERK).get("/api/schedule?format=xlsx" + before).expect(200).bytes()))) {
            assertThat(workbook.getSheet("Schedule").getLastRowNum()).isEqualTo(1);
            assertThat(workbook.getSheet(ReadFirst.NAME).getRow(2).getCell(1).getStringCellValue())
                    .startsWith("As of 2026-11-21, by what was recorded until 2026-11-25T12:00:00Z");
        }
    }

    @Test
    void ofAnotherDayTheMonthIsThatDays() {
        var site = given.site(given.customer());
        var body = Given.cylinder();
        body.put("manufactured", "2015-03");
        given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        for (var day : Map.of("2027-02-28", "IN_DATE", "2027-03-31", "DUE_THIS_MONTH", "2027-04-01", "OVERDUE")
                .entrySet()) {
            assertThat(api.as(Role.CLERK).get("/api/schedule?site=" + site + "&asOf=" + day.getKey()).expect(200)
                    .text("/items/0/status")).isEqualTo(day.getValue());
            assertThat(api.as(Role.CLERK).get("/api/schedule?site=" + site + "&asOf=" + day.getKey() + "&status="
                    + day.getValue()).expect(200).at("/items")).hasSize(1);
        }
    }

    @Test
    void pagesGoOnWhereTheyEnded() {
        var site = given.site(given.customer());
        for (var month : new String[]{"2015-03", "2015-01", "2014-12"}) {
            var body = Given.cylinder();
            body.put("manufactured", month);
            given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        }
        var months = new ArrayList<String>();
        var next = "";
        do {
            var page = api.as(Role.CLERK).get("/api/schedule?size=1&asOf=2027-01-15&site=" + site + "&cursor=" + next)
                    .expect(200);
            page.at("/items").forEach(line -> months.add(line.at("/due").asString()));
            next = page.json().path("next").asString("");
        } while (!next.isEmpty());
        assertThat(months).containsExactly("2026-12", "2027-01", "2027-03");
    }

    @Test
    void whatCannotBeAskedIsNamed() {
        tables.unchangedBy(() -> assertThat(api.as(Role.CLERK)
                .get("/api/schedule?asOf=2026-02-30&knownAt=2999-01-01T00:00:00Z&from=2027-13")
                .expectProblem(400, "INVALID_INPUT").errors()).containsExactlyInAnyOrderEntriesOf(
                        Map.of("asOf", "INVALID_DATE", "knownAt", "IN_THE_FUTURE", "from", "INVALID_MONTH")));
        for (var path : new String[]{"/api/schedule?knownAt=then", "/api/schedule/summary?asOf=0999-01-01",
                "/api/schedule/undetermined?knownAt=2026-11-01", "/api/schedule?format=ics&asOf=2026-11-01"}) {
            api.as(Role.CLERK).get(path).expectProblem(400, "INVALID_INPUT");
        }
    }
}
