package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import javax.sql.DataSource;

import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.platform.jobs.Jobs;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.postgresql.PGConnection;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.transaction.support.TransactionTemplate;

import tools.jackson.databind.json.JsonMapper;

@RegisterTest
class ScheduleExportTests {

    private final Api api;
    private final Given given;
    private final Tables tables;
    private final TestClock clock;
    private final JdbcClient jdbc;
    private final DataSource source;
    private final DataSource owner;
    private final ExportFiles files;
    private final ScheduleExports queued;
    private final MakeExports make;
    private final Jobs jobs;
    private final TransactionTemplate transaction;
    private final JsonMapper json;
    private final Exports exports;

    ScheduleExportTests(Api api, Given given, Tables tables, TestClock clock, JdbcClient jdbc, DataSource source,
            Flyway flyway, ExportFiles files, ScheduleExports queued, MakeExports make, Jobs jobs,
            TransactionTemplate transaction, JsonMapper json) {
        this.api = api;
        this.given = given;
        this.tables = tables;
        this.clock = clock;
        this.jdbc = jdbc;
        this.source = source;
        this.owner = flyway.getConfiguration().getDataSource();
        this.files = files;
        this.queued = queued;
        this.make = make;
        this.jobs = jobs;
        this.transaction = transaction;
        this.json = json;
        this.exports = new Exports(api, given);
    }

    private UUID cylinderAt(UUID site, String manufactured) {
        var body = Given.cylinder();
        body.put("manufactured", manufactured);
        body.put("tag", "=1+\"é," + Given.serial());
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    /** Four that fall due in three years, and one of which a fact is missing. */
    private UUID fleet() {
        var site = given.site(given.customer());
        for (var month : new String[]{"2010-01", "2014-12", "2015-01", "2015-03"}) {
            cylinderAt(site, month);
        }
        var unknown = Given.cylinder();
        unknown.put("coated", null);
        unknown.put("manufactured", "2012-01");
        given.moved(given.registered(unknown), site, "2026-11-20T09:00:00Z");
        return site;
    }

    private static Map<String, Object> of(UUID site, Object... formats) {
        return Map.of("filter", Map.of("site", site), "formats", List.of(formats));
    }

    @Test
    void hasTheFilesOfTheScheduleAndWhatIsUndetermined() throws IOException {
        var site = fleet();
        var export = exports.done(of(site, "CSV", "PLAIN_CSV", "XLSX", "ICS", "JSON_LINES"));
        assertThat(export.at("/manifest/files").valueStream().map(file -> file.path("name").asString()))
                .containsExactly(
                        "schedule.csv", "schedule-plain.csv", "schedule.xlsx", "schedule.ics", "schedule.jsonl",
                        "undetermined.csv");
        assertThat(export.text("/manifest/errors")).isEqualTo("undetermined.csv");
        assertThat(export.text("/manifest/snapshotAt")).isEqualTo("2026-11-25T12:00:00Z");
        assertThat(export.text("/expiresAt")).isEqualTo("2026-12-02T12:00:00Z");
        assertThat(export.text("/manifest/ruleBook")).startsWith("sha256:");
        assertThat(export.text("/manifest/asked/filter/site")).isEqualTo(site.toString());
        assertThat(export.text("/manifest/requestedBy")).isEqualTo(export.text("/requestedBy"));
        assertThat(exports.file(export, "schedule.csv").bytes())
                .isEqualTo(api.as(Role.CLERK).get("/api/schedule?format=csv&site=" + site).bytes());
        var pages = api.as(Role.CLERK).get("/api/schedule?site=" + site).at("/items").valueStream()
                .map(Object::toString).toList();
        assertThat(pages).hasSize(4);
        assertThat(exports.file(export, "schedule.jsonl").body().lines().map(line -> json.readTree(line).toString()))
                .containsExactlyElementsOf(pages);
        try (var workbook = new XSSFWorkbook(new ByteArrayInputStream(exports.file(export, "schedule.xlsx").bytes()))) {
            assertThat(workbook.getSheet("Schedule").getLastRowNum()).isEqualTo(4);
        }
        assertThat(exports.file(export, "schedule.ics").body()).contains("BEGIN:VEVENT");
        var missing = Exports.rows(exports.file(export, "undetermined.csv"));
        assertThat(missing).hasSize(1);
        assertThat(missing.getFirst().get("missing")).isEqualTo("MISSING_COATED");
        for (var file : export.at("/manifest/files")) {
            assertSound(export, file.path("name").asString(), file.path("sha256").asString(),
                    file.path("bytes").asLong());
        }
    }

    private void assertSound(Answer export, String name, String sha256, long bytes) {
        var file = exports.file(export, name);
        assertThat(Exports.sha256(file.bytes())).as(name).isEqualTo(sha256);
        assertThat(file.etag()).isEqualTo("\"" + sha256 + "\"");
        assertThat(file.header("Content-Length")).isEqualTo(String.valueOf(bytes));
        assertThat(file.header("Content-Disposition")).contains("filename=\"" + name + "\"");
        assertThat(api.as(Role.CLERK).with("If-None-Match", file.etag())
                .get("/api/schedule-exports/" + export.id() + "/files/" + name).status()).isEqualTo(304);
    }

    /** By PostgreSQL's own reader of COPY, against the rows that the pages have. */
    @Test
    void thePlainFileIsReadByCopy() throws SQLException, IOException {
        var site = fleet();
        var plain = exports.file(exports.done(of(site, "PLAIN_CSV")), "schedule-plain.csv");
        var pages = api.as(Role.CLERK).get("/api/schedule?site=" + site).at("/items").valueStream()
                .map(line -> String.join("|", line.path("due").asString(), line.path("lastDay").asString(),
                        line.path("status").asString(), line.path("serial").asString(), line.path("tag").asString(),
                        line.path("siteName").asString(), line.path("containerId").asString()))
                .toList();
        try (var connection = source.getConnection()) {
            var here = JdbcClient.create(new SingleConnectionDataSource(connection, true));
            here.sql("create temp table exported (due text, last_day date, status text, requirement text, rule text,"
                    + " kind text, specification text, maker text, serial text, manufactured text, size text, tag text,"
                    + " site text, site_name text, customer text, owner text, routes text, container_id uuid,"
                    + " jurisdiction text)").update();
            try {
                connection.unwrap(PGConnection.class).getCopyAPI().copyIn(
                        "copy exported from stdin with (format csv, header match)",
                        new ByteArrayInputStream(plain.bytes()));
                assertThat(here.sql("select concat_ws('|', due, last_day, status, serial, tag, site_name, container_id)"
                        + " from exported").query(String.class).list()).containsExactlyElementsOf(pages);
            } finally {
                here.sql("drop table exported").update();
            }
        }
    }

    @Test
    void eachYearMayHaveAFileOfItsOwn() {
        var site = fleet();
        var export = exports.done(Map.of("filter", Map.of("site", site, "from", "2026-01"), "formats", List.of("CSV"),
                "files", "YEAR"));
        assertThat(export.at("/manifest/files").valueStream().map(file -> file.path("name").asString() + " "
                + file.path("rows").asInt())).containsExactly("schedule-2026.csv 1", "schedule-2027.csv 2",
                        "undetermined.csv 1");
    }

    /**
     * The first file cannot be stored while another session holds its table; what is recorded meanwhile is in none of the
     * files, the last included.
     */
    @Test
    void allFilesAreOfOneSnapshot() throws SQLException {
        var site = fleet();
        String id;
        try (var connection = owner.getConnection()) {
            connection.setAutoCommit(false);
            var locking = JdbcClient.create(new SingleConnectionDataSource(connection, true));
            locking.sql("lock table schedule_export_piece in share mode").update();
            id = exports.asked(of(site, "CSV", "PLAIN_CSV", "JSON_LINES")).id();
            waitUntilStopped(locking);
            cylinderAt(site, "2015-05");
            var late = Given.cylinder();
            late.put("coated", null);
            given.moved(given.registered(late), site, "2026-11-20T09:00:00Z");
            assertThat(api.as(Role.CLERK).get("/api/schedule?site=" + site).at("/items")).hasSize(5);
            assertThat(api.as(Role.CLERK).get("/api/schedule/undetermined?site=" + site).at("/items")).hasSize(2);
            connection.rollback();
        }
        var export = exports.over(id);
        assertThat(export.at("/manifest/files").valueStream().map(file -> file.path("rows").asInt()))
                .as(export.body()).containsExactly(4, 4, 4, 1);
    }

    private static void waitUntilStopped(JdbcClient locking) {
        var end = Instant.now().plus(Duration.ofMinutes(2));
        while (locking.sql("select count(*) from pg_locks where not granted and relation ="
                + " 'schedule_export_piece'::regclass").query(Integer.class).single() == 0) {
            assertThat(Instant.now()).as("the export has come to its first file").isBefore(end);
            Exports.pause();
        }
    }

    /** What is recorded after the moment is in neither of the two, nor is where it has been moved. */
    @Test
    void ofAnotherDayItIsTheScheduleOfThatDay() {
        var site = fleet();
        var asked = "asOf=2027-02-01&knownAt=2026-11-25T12:00:00Z&site=" + site;
        clock.set(TestClock.TODAY.plusDays(1));
        cylinderAt(site, "2015-05");
        var export = exports.done(Map.of("filter", Map.of("site", site), "asOf", "2027-02-01", "knownAt",
                "2026-11-25T12:00:00Z", "formats", List.of("CSV", "XLSX")));
        assertThat(exports.file(export, "schedule.csv").bytes())
                .isEqualTo(api.as(Role.CLERK).get("/api/schedule?format=csv&" + asked).expect(200).bytes());
        assertThat(Exports.rows(exports.file(export, "schedule.csv"))).extracting(row -> row.get("status"))
                .containsExactly("OVERDUE", "OVERDUE", "OVERDUE", "IN_DATE");
        assertThat(export.at("/progress/containersReplayed").asInt()).isEqualTo(5);
        assertThat(Exports.rows(exports.file(export, "undetermined.csv"))).hasSize(1);
    }

    @Test
    void anExportWhoseMakerDiedIsMadeFromTheStart() {
        var site = fleet();
        var claim = transaction.execute(status -> {
            queued.queue(
                    new ExportAsked(ScheduleQuestion.of(new ScheduleFilter(null, null, site, null, null, null, null,
                            null, null, null, null)), null, null, List.of(ExportFormat.CSV), false, null),
                    new Caller(UUID.randomUUID(), "a clerk", Set.of(Role.CLERK),
                            CustomerScope.EVERYONE));
            return queued.jobs().claim().orElseThrow();
        });
        var half = files.write(claim, "schedule.csv", "text/csv", out -> {
            out.write("half a file".getBytes(StandardCharsets.UTF_8));
            return 1;
        });
        assertThat(half.bytes()).isEqualTo(11);
        jdbc.sql("update schedule_export set lease_until = now() - interval '1 second' where id = ?")
                .param(claim.id()).update();
        jobs.start(make);
        var export = exports.over(claim.id().toString());
        assertThat(export.text("/status")).isEqualTo("DONE");
        assertThat(export.at("/progress/attempt").asInt()).isEqualTo(2);
        assertThat(Exports.rows(exports.file(export, "schedule.csv"))).hasSize(4);
        assertThat(jdbc.sql("select count(distinct attempt) from schedule_export_piece where export_id = ?")
                .param(claim.id()).query(Integer.class).single()).isEqualTo(1);
        tables.unchangedBy(() -> assertThat(queued.jobs().renew(claim, ScheduleExports.written(1, 0))).isFalse());
    }

    @Test
    void anExportThatIsCancelledHasNoFiles() throws SQLException {
        var site = fleet();
        String id;
        try (var connection = owner.getConnection()) {
            connection.setAutoCommit(false);
            var locking = JdbcClient.create(new SingleConnectionDataSource(connection, true));
            locking.sql("lock table schedule_export_piece in share mode").update();
            id = exports.asked(of(site, "CSV")).id();
            waitUntilStopped(locking);
            var path = "/api/schedule-exports/" + id;
            tables.unchangedBy(() -> api.as(Role.CLERK).get(path + "/files/schedule.csv")
                    .expectProblem(409, "EXPORT_NOT_DONE"));
            assertThat(api.as(Role.CLERK).post(path + "/cancellation", "").expect(200).text("/status"))
                    .isEqualTo("CANCELLED");
            api.as(Role.CLERK).post(path + "/cancellation", "").expectProblem(409, "EXPORT_IS_OVER");
            connection.rollback();
        }
        // another one of this kind is made only when nobody works on that one any more
        exports.done(of(site, "CSV"));
        assertThat(exports.over(id).text("/status")).isEqualTo("CANCELLED");
        clock.set(TestClock.TODAY.plusDays(1));
        files.sweep();
        assertThat(stored(id)).isZero();
    }

    private long stored(String id) {
        return jdbc.sql("select count(*) from schedule_export_piece where export_id = ?").param(UUID.fromString(id))
                .query(Long.class).single()
                + jdbc.sql("select count(*) from schedule_export_key where export_number = (select number from"
                        + " schedule_export where id = ?)").param(UUID.fromString(id)).query(Long.class).single();
    }

    @Test
    void filesAndKeysAreDeletedWhenTheirTimeHasCome() {
        var site = fleet();
        var export = exports.done(of(site, "CSV"));
        clock.set(TestClock.TODAY.plusDays(6));
        files.sweep();
        assertThat(exports.file(export, "schedule.csv").bytes()).isNotEmpty();
        clock.set(TestClock.TODAY.plusDays(8));
        api.as(Role.CLERK).get("/api/schedule-exports/" + export.id() + "/files/schedule.csv")
                .expectProblem(410, "EXPORT_EXPIRED");
        files.sweep();
        files.sweep();
        assertThat(stored(export.id())).as("the keys of four rows").isEqualTo(4);
        exports.done(Map.of("filter", Map.of("site", site), "formats", List.of("CSV"), "since", export.id()));
        clock.set(TestClock.TODAY.plusDays(401));
        files.sweep();
        assertThat(stored(export.id())).isZero();
        assertThat(api.as(Role.CLERK).post("/api/schedule-exports", Map.of("filter", Map.of("site", site), "formats",
                List.of("CSV"), "since", export.id())).expectProblem(400, "INVALID_INPUT").errors())
                .containsEntry("/since", "UNKNOWN_EXPORT");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"{} | /formats | MISSING", "{\"formats\":[]} | /formats | MISSING",
            "{\"formats\":[\"PDF\"]} | /formats/0 | UNKNOWN_WORD",
            "{\"formats\":[\"CSV\"],\"files\":\"MONTH\"} | /files | UNKNOWN_WORD",
            "{\"formats\":[\"CSV\"],\"filter\":{\"site\":\"nowhere\"}} | /filter/site | UNKNOWN_SITE",
            "{\"formats\":[\"CSV\"],\"knownAt\":\"2999-01-01T00:00:00Z\"} | /knownAt | IN_THE_FUTURE",
            "{\"formats\":[\"ICS\"],\"asOf\":\"2026-11-01\"} | /formats | NOT_OF_ANOTHER_DAY",
            "{\"formats\":[\"CSV\"],\"since\":\"last week\"} | /since | UNKNOWN_EXPORT"})
    void refusesWhatCannotBeMade(String body, String pointer, String code) {
        tables.unchangedBy(() -> assertThat(api.as(Role.CLERK).post("/api/schedule-exports", body)
                .expectProblem(400, "INVALID_INPUT").errors()).containsExactly(Map.entry(pointer, code)));
    }

    @Test
    void refusesWhomItIsNotFor() {
        tables.unchangedBy(() -> api.as(Role.FILLER).post("/api/schedule-exports", Map.of("formats", List.of("CSV")))
                .expectProblem(403, "FORBIDDEN"));
        api.as(Role.CLERK).get("/api/schedule-exports/" + UUID.randomUUID()).expectProblem(404, "NOT_FOUND");
        var export = exports.done(of(given.site(null), "CSV"));
        api.as(Role.CLERK).get("/api/schedule-exports/" + export.id() + "/files/other.csv")
                .expectProblem(404, "NOT_FOUND");
        assertThat(api.as(Role.CLERK).get("/api/schedule-exports?size=1").expect(200).text("/items/0/id"))
                .isEqualTo(export.id());
    }

    @Test
    void aRepeatGetsTheFirstAnswer() {
        var site = given.site(null);
        var key = UUID.randomUUID().toString();
        var clerk = api.as(Role.CLERK).with("Idempotency-Key", key);
        var first = clerk.post("/api/schedule-exports", of(site, "CSV")).expect(202);
        assertThat(first.header("Location")).isEqualTo("/api/schedule-exports/" + first.id());
        assertThat(clerk.post("/api/schedule-exports", of(site, "CSV")).expect(202).id()).isEqualTo(first.id());
        clerk.post("/api/schedule-exports", of(site, "XLSX")).expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
        assertThat(exports.over(first.id()).text("/status")).isEqualTo("DONE");
    }
}
