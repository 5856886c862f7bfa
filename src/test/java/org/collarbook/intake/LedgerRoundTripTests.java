package org.collarbook.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;

import org.apache.commons.csv.CSVFormat;
import org.collarbook.access.Role;
import org.collarbook.platform.SpreadsheetText;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Started;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.postgresql.PGConnection;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.util.StringUtils;

/** From one register into another, empty one and out again: the demo's fleet, and containers with every fact. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class LedgerRoundTripTests {

    private static final long SEED = Long.getLong("seed", 20_261);

    private final Started one = Started.on(Started.database(), Map.of("collarbook.demo", "true"));
    private final Started two = Started.on(Started.database(), Map.of());
    private Answer written = new Answer(0, null, new byte[0], null);
    private String report = "";

    @BeforeAll
    void fillOneAndLoadTheOther() {
        new EveryFact(one, SEED).fill(300);
        written = ledger(one);
        var checked = Ledger.checked(two.get(Api.class), written.bytes(), null);
        report = checked.body();
        Ledger.committed(two.get(Api.class), checked, "SKIP");
    }

    @AfterAll
    void stop() {
        one.close();
        two.close();
    }

    private static Answer ledger(Started service) {
        return service.get(Api.class).as(Role.CLERK).get("/api/ledger").expect(200);
    }

    private static long containers(Started service) {
        return service.get(JdbcClient.class).sql("select count(*) from container where id not in"
                + " (select container_id from absorbed)").query(Long.class).single();
    }

    @Test
    @Order(1)
    void everyRowIsTaken() {
        assertThat(report).contains("\"refused\":0");
        assertThat(containers(two)).isEqualTo(containers(one)).isGreaterThan(5_200);
    }

    @Test
    @Order(2)
    void writtenAgainItIsTheSame() {
        assertThat(written.contentType()).isEqualTo("text/csv;charset=UTF-8");
        var first = written.body().split("\r\n", -1);
        var second = ledger(two).body().split("\r\n", -1);
        assertThat(Arrays.mismatch(first, second)).withFailMessage(() -> {
            int at = Arrays.mismatch(first, second);
            return "seed " + SEED + ", line " + at + "\n" + first[at] + "\n" + second[at];
        }).isEqualTo(-1);
        assertThat(ledger(two).bytes()).isEqualTo(written.bytes());
    }

    @Test
    @Order(3)
    void loadedOnceMoreNothingChanges() {
        for (var service : List.of(one, two)) {
            var checked = Ledger.checked(service.get(Api.class), written.bytes(), null);
            long rows = containers(service);
            assertThat(Ledger.rows(checked)).as(checked.body()).isEqualTo(rows + "/0/0/" + rows + "/0/0");
            assertThat(Ledger.rows(Ledger.committed(service.get(Api.class), checked, "ABORT")))
                    .isEqualTo(rows + "/0/0/" + rows + "/0/0");
            assertThat(ledger(service).bytes()).isEqualTo(written.bytes());
        }
    }

    /** By natural key: the stored answers of every container, and of those that the demo did not make the whole answer. */
    @Test
    @Order(4)
    void everyContainerIsJudgedAlike() {
        assertThat(stored(two)).isEqualTo(stored(one));
        var before = judged(one);
        var after = judged(two);
        assertThat(after.keySet()).isEqualTo(before.keySet());
        before.forEach((key, judged) -> {
            assertThat(after.get(key).status).as(key).isEqualTo(judged.status);
            for (int i = 0; i < judged.allowed.size(); i++) {
                assertThat(after.get(key).allowed.get(i) && !judged.allowed.get(i)).as(key + " " + i).isFalse();
            }
        });
        assertThat(after).isEqualTo(before);
        assertThat(before.values().stream().filter(judged -> judged.allowed.getFirst())).hasSizeGreaterThan(5);
    }

    private static Map<String, String> stored(Started service) {
        var rows = new TreeMap<String, String>();
        service.get(JdbcClient.class).sql("""
                select c.specification || ' ' || coalesce(c.maker, '') || ' ' || c.serial || ' '
                    || coalesce(c.manufactured::text, '') as key,
                  string_agg(concat_ws(' ', r.requirement, r.jurisdiction, r.decisive, r.standing, r.due,
                    r.filled_in_time, r.rule, r.reasons, r.changes_on, r.changes_to), ', '
                    order by r.requirement, r.jurisdiction) as told
                from container c join requirement r on r.container_id = c.id
                where c.id not in (select container_id from absorbed) group by 1""").query(row -> {
            rows.put(row.getString(1), row.getString(2));
        });
        return rows;
    }

    private record Judged(String status, List<Boolean> allowed, String requirements, String reasons) {}

    private static Map<String, Judged> judged(Started service) {
        var judged = new TreeMap<String, Judged>();
        var clerk = service.get(Api.class).as(Role.CLERK);
        service.get(JdbcClient.class).sql("""
                select id, concat_ws(' ', specification, maker, serial, manufactured) from container
                where serial like '%T%-%' and id not in (select container_id from absorbed)""").query(row -> {
            var answer = clerk.get("/api/containers/" + row.getObject(1, UUID.class) + "/assessment").expect(200);
            var requirements = new ArrayList<String>();
            answer.at("/requirements").forEach(one -> requirements.add(one.at("/requirement").asString() + " "
                    + one.at("/outcome").asString() + " " + one.at("/due").asString("") + " " + one.at("/rule")
                            .asString("")));
            judged.put(row.getString(2), new Judged(answer.text("/status"), List.of("mayFill", "mayCarry",
                    "mayCarryEmpty", "mayUse").stream().map(name -> answer.at("/" + name).asBoolean(false)).toList(),
                    requirements.toString(), answer.at("/reasons").findValuesAsString("code").stream().sorted()
                            .collect(Collectors.joining(" "))));
        });
        return judged;
    }

    /** Two readers that know nothing of ours: commons-csv, and PostgreSQL's COPY. */
    @Test
    @Order(5)
    void otherReadersFindTheSameCells() throws IOException, SQLException {
        var cells = new ArrayList<List<String>>();
        try (var parser = CSVFormat.RFC4180.parse(new StringReader(written.body()))) {
            parser.forEach(record -> cells.add(record.toList()));
        }
        assertThat(cells.getFirst()).isEqualTo(LedgerColumn.words());
        assertThat(cells.stream().map(List::size).distinct()).containsExactly(LedgerColumn.values().length);
        assertThat(copied()).isEqualTo(cells.subList(1, cells.size()));
        var owner = LedgerColumn.OWNER.ordinal();
        assertThat(cells.stream().map(row -> row.get(owner)).toList())
                .containsAll(EveryFact.ODD.stream().map(SpreadsheetText::asItIs).toList());
        assertThat(StringUtils.countOccurrencesOf(written.body(), "\n"))
                .isEqualTo(StringUtils.countOccurrencesOf(written.body(), "\r\n"));
    }

    private List<List<String>> copied() throws SQLException, IOException {
        var details = two.get(FlywayConnectionDetails.class);
        var columns = LedgerColumn.words();
        try (var connection = DriverManager.getConnection(details.getJdbcUrl(), details.getUsername(),
                details.getPassword()); var statement = connection.createStatement()) {
            statement.execute("create temporary table told (line int generated always as identity, " + columns.stream()
                    .map(column -> column + " text").collect(Collectors.joining(", ")) + ")");
            connection.unwrap(PGConnection.class).getCopyAPI().copyIn("copy told (" + String.join(", ", columns)
                    + ") from stdin with (format csv, header match)", new ByteArrayInputStream(written.bytes()));
            var rows = new ArrayList<List<String>>();
            try (var found = statement.executeQuery("select * from told order by line")) {
                while (found.next()) {
                    var row = new ArrayList<String>();
                    for (int i = 2; i <= columns.size() + 1; i++) {
                        var cell = found.getString(i);
                        row.add(cell == null ? "" : cell);
                    }
                    rows.add(row);
                }
            }
            return rows;
        }
    }

    private record Key(String specification, String maker, String serial, String month, String stamp) {

        /** UTF-8 keeps the order of the code points. */
        static final Comparator<String> BY_CODE_POINTS = (a, b) -> Arrays.compareUnsigned(
                a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8));
        static final Comparator<Key> ORDER = Comparator.comparing(Key::specification, BY_CODE_POINTS)
                .thenComparing(Key::maker, BY_CODE_POINTS).thenComparing(Key::serial, BY_CODE_POINTS)
                .thenComparing(Key::month);
    }

    @Test
    @Order(6)
    void rowsAreSortedByTheirNaturalKey() throws IOException {
        var keys = new ArrayList<Key>();
        one.get(JdbcClient.class).sql("""
                select specification, coalesce(maker, ''), serial, coalesce(manufactured::text, ''),
                  coalesce(serial_as_stamped, serial) from container
                where id not in (select container_id from absorbed)""").query(row -> {
            keys.add(new Key(row.getString(1), row.getString(2), row.getString(3), row.getString(4),
                    row.getString(5)));
        });
        keys.sort(Key.ORDER);
        try (var parser = CSVFormat.RFC4180.parse(new StringReader(written.body()))) {
            assertThat(parser.stream().skip(1).map(row -> row.get(LedgerColumn.SERIAL.ordinal())).toList())
                    .isEqualTo(keys.stream().map(Key::stamp).map(SpreadsheetText::asItIs).toList());
        }
    }

    @Test
    @Order(7)
    void theOfficeAloneReadsIt() {
        one.get(Api.class).as(Role.FILLER).get("/api/ledger").expectProblem(403, "FORBIDDEN");
        one.get(Api.class).as(Role.DISPATCHER).get("/api/ledger").expectProblem(403, "FORBIDDEN");
        one.get(Api.class).anonymous().get("/api/ledger").expectProblem(401, "KEY_REQUIRED");
        assertThat(one.get(Api.class).as(Role.CLERK).get("/api/ledger?format=csv").expect(200).bytes())
                .isEqualTo(written.bytes());
        one.get(Api.class).as(Role.CLERK).get("/api/ledger?format=pdf").expect(406);
        assertThat(one.get(Api.class).as(Role.CLERK).send("HEAD", "/api/ledger", null).expect(200).bytes()).isEmpty();
    }
}
