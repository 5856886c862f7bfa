package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A ledger from the hand-in to the register. */
@RegisterTest
class ImportTests {

    private final Api api;
    private final Tables tables;
    private final JdbcClient jdbc;
    private final TestClock clock;

    ImportTests(Api api, Tables tables, JdbcClient jdbc, TestClock clock) {
        this.clock = clock;
        this.api = api;
        this.tables = tables;
        this.jdbc = jdbc;
    }

    private List<String> requirements(String serial) {
        return jdbc.sql("""
                select r.standing || coalesce(' ' || r.due, '') from requirement r join container c on c.id = r.container_id
                where c.serial = ? and r.decisive""").param(serial).query(String.class).list();
    }

    @Test
    void aCheckChangesNothingAndTheCommitDoesWhatItSaid() {
        var serial = Given.serial();
        var site = "S" + serial;
        var ledger = new Ledger()
                .row("serial", serial, "tag", "TAG-" + serial, "last_test_mark", "5/B045/16E", "site", site,
                        "site_name", "North dock", "site_kind", "CUSTOMER", "customer", "C" + serial,
                        "customer_name", "Dunmarrow Foundry", "latitude", "41.1", "longitude", "-99.2",
                        "filled_on", "2021-05-20")
                .row("site", site, "last_test_mark", "none").csv();
        var before = tables.digest();
        var checked = Ledger.checked(api, ledger, Ledger.declaration());
        assertEquals("2/2/0/0/0/0", Ledger.rows(checked));
        assertEquals(before, tables.digest());
        assertEquals("CHECKED", checked.text("/state"));
        assertEquals("2", checked.at("/progress/rows").asString());
        assertEquals(checked.at("/bytes"), checked.at("/progress/bytes"));

        var committed = Ledger.committed(api, checked, "ABORT");
        assertEquals("2/2/0/0/0/0", Ledger.rows(committed));
        assertEquals("COMMITTED", committed.text("/state"));
        // 49 CFR 180.209(g): five years after a visual inspection in May 2016
        assertEquals(List.of("DUE 2021-05-01"), requirements(serial));
        assertEquals("Dunmarrow Foundry", jdbc.sql("""
                select u.name from container c join placement p on p.container_id = c.id join site s on s.id = p.site_id
                join customer u on u.id = s.customer_id where c.serial = ? and s.zone = 'America/Chicago'
                  and s.jurisdiction = 'US' and s.latitude = 41.1 and s.longitude = -99.2""").param(serial)
                .query(String.class).single());
        assertEquals("5/B045/16E B045 EXTERNAL_VISUAL 2021-05-20", jdbc.sql("""
                select concat_ws(' ', q.as_stamped, q.rin, q.method, f.filled_on) from container c
                join requalification q on q.container_id = c.id join fill f on f.container_id = c.id
                where c.serial = ?""").param(serial).query(String.class).single());
    }

    @Test
    void aSecondCommitIsRefusedAndTheSameFileAgainChangesNothing() {
        var serial = Given.serial();
        var ledger = new Ledger().row("serial", serial, "tag", "TAG-" + serial, "last_test_mark", "5-16E", "site",
                "S" + serial, "site_kind", "DEPOT", "filled_on", "2021-05-20", "tare", "TW 17")
                .row("last_test_mark", "none").row("last_test_month", "2019-03").row().csv();
        var checked = Ledger.checked(api, ledger, Ledger.declaration());
        Ledger.committed(api, checked, "SKIP");
        Ledger.commit(api, checked, "SKIP").expectProblem(409, "ALREADY_COMMITTED");

        var digest = tables.digest();
        var again = Ledger.checked(api, ledger, Ledger.declaration());
        assertEquals("4/0/0/4/0/0", Ledger.rows(again));
        assertEquals("4/0/0/4/0/0", Ledger.rows(Ledger.committed(api, again, "ABORT")));
        assertEquals(digest, tables.digest());
    }

    @Test
    void aCommitIsRepeatedSafelyUnderItsKeyAndNeedsTheVersionThatWasRead() {
        var checked = Ledger.checked(api, new Ledger().row().csv(), null);
        var path = "/api/imports/" + checked.id() + "/commit";
        var clerk = api.as(Role.CLERK);
        clerk.ifMatch(checked).post(path, Map.of("refused", "SKIP")).expectProblem(400, "IDEMPOTENCY_KEY_REQUIRED");
        var keyed = clerk.with("Idempotency-Key", UUID.randomUUID().toString());
        keyed.post(path, Map.of("refused", "SKIP")).expectProblem(428, "IF_MATCH_REQUIRED");
        keyed.with("If-Match", "\"7\"").post(path, Map.of("refused", "SKIP")).expectProblem(412, "STALE_VERSION");
        keyed.ifMatch(checked).post(path, Map.of()).expectProblem(400, "INVALID_INPUT");
        var first = keyed.ifMatch(checked).post(path, Map.of("refused", "SKIP")).expect(202);
        var second = keyed.ifMatch(checked).post(path, Map.of("refused", "SKIP")).expect(202);
        assertEquals("true", second.header("Idempotent-Replay"));
        assertEquals(first.json(), second.json());
        Ledger.over(api, first, "COMMITTED");
        clerk.get("/api/imports/" + UUID.randomUUID()).expectProblem(404, "NOT_FOUND");
        clerk.get("/api/imports/" + UUID.randomUUID() + "/lines").expectProblem(404, "NOT_FOUND");
    }

    @Test
    void aHandingInIsRepeatedSafelyUnderItsKey() {
        var csv = new Ledger().row().csv().getBytes(StandardCharsets.UTF_8);
        var keyed = api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString());
        var first = Ledger.handIn(keyed, csv, Ledger.declaration(), Map.of()).expect(202);
        Ledger.over(api, first, "CHECKED");
        tables.unchangedBy(() -> {
            var again = Ledger.handIn(keyed, csv, Ledger.declaration(), Map.of()).expect(202);
            assertEquals("true", again.header("Idempotent-Replay"));
            assertEquals(first.header("Location"), again.header("Location"));
            Ledger.handIn(keyed, csv, null, Map.of()).expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
            Ledger.handIn(keyed, new Ledger().row().csv().getBytes(StandardCharsets.UTF_8), Ledger.declaration(),
                    Map.of()).expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
        });
        // what was refused has kept nothing
        var other = api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString());
        Ledger.handIn(other, new byte[0], null, Map.of()).expectProblem(400, "EMPTY_LEDGER");
        Ledger.over(api, Ledger.handIn(other, csv, null, Map.of()).expect(202), "CHECKED");
    }

    @Test
    void abortStoresNothingAndSkipTheRest() {
        var serial = Given.serial();
        var ledger = new Ledger().row("serial", serial).row("manufactured", "13-04").csv();
        var checked = Ledger.checked(api, ledger, null);
        assertEquals("2/1/0/0/1/0", Ledger.rows(checked));
        tables.unchangedBy(() -> {
            var aborted = Ledger.commit(api, checked, "ABORT").expectProblem(409, "ROWS_REFUSED");
            assertEquals("1", aborted.text("/refused"));
        });
        assertEquals("2/1/0/0/1/0", Ledger.rows(Ledger.committed(api, checked, "SKIP")));
        assertEquals(1, requirements(serial).size());
    }

    @Test
    void withoutADeclarationNothingIsAssumed() {
        var bare = Given.serial();
        new Ledger().row("serial", bare, "last_test_mark", "5-16E").load(api, null);
        assertEquals(List.of("UNDETERMINED"), requirements(bare));
        var declared = Given.serial();
        new Ledger().row("serial", declared, "last_test_mark", "5-16E").load(api, Ledger.declaration());
        assertEquals(List.of("DUE 2021-05-01"), requirements(declared));
    }

    @Test
    void aBareMonthHasNoMethodUntilItIsDeclared() {
        var serial = Given.serial();
        var ledger = new Ledger().row("serial", serial, "last_test_month", "2016-05");
        ledger.load(api, Ledger.declaration());
        assertEquals(List.of("UNDETERMINED"), requirements(serial));
        assertEquals(1, tables.count("requalification q join container c on c.id = q.container_id where c.serial = '"
                + serial + "' and q.method is null and q.month = '2016-05-01'"));

        var said = Ledger.declaration();
        said.put("bareMonthMethod", "EXTERNAL_VISUAL");
        var other = Given.serial();
        new Ledger().row("serial", other, "last_test_month", "05-16").load(api, said);
        assertEquals(List.of("DUE 2021-05-01"), requirements(other));
        assertEquals(1, tables.count("requalification q join container c on c.id = q.container_id where c.serial = '"
                + other + "' and q.method = 'EXTERNAL_VISUAL' and q.rin_seen and q.declaration_id is not null"));
    }

    @Test
    void aMethodThatIsDeclaredLaterIsATestBesideTheBareMonth() {
        var serial = Given.serial();
        var ledger = new Ledger().row("serial", serial, "last_test_month", "2016-05");
        ledger.load(api, Ledger.declaration());
        var said = Ledger.declaration();
        said.put("bareMonthMethod", "EXTERNAL_VISUAL");
        assertEquals("1/0/1/0/0/0", Ledger.rows(ledger.load(api, said)));
        // the other way round the bare month tells nothing that is not known
        assertEquals("1/0/0/1/0/0", Ledger.rows(ledger.load(api, Ledger.declaration())));
        assertEquals(2, tables.count("requalification q join container c on c.id = q.container_id where c.serial = '"
                + serial + "'"));
    }

    @Test
    void aRinThatComesLaterIsToldOf() {
        var serial = Given.serial();
        var said = Ledger.declaration();
        said.remove("rinSeen");
        new Ledger().row("serial", serial, "last_test_mark", "5-16E").load(api, said);
        var again = Ledger.checked(api, new Ledger().row("serial", serial, "last_test_mark", "5-16E", "rin", "B045")
                .csv(), said);
        assertEquals("1/0/0/1/0/0", Ledger.rows(again));
        assertEquals("2 rin TEST_KEPT", Ledger.firstProblem(again));
    }

    @Test
    void aBlankHistoryIsUnknownUnlessTheDeclarationSaysThatItMeansNone() {
        var unknown = Given.serial();
        var none = Given.serial();
        new Ledger().row("serial", unknown, "manufactured", "2020-05").row("serial", none, "manufactured", "2020-05",
                "last_test_mark", "none").load(api, Ledger.declaration());
        assertEquals(List.of("UNDETERMINED"), requirements(unknown));
        // 49 CFR 180.209(a): twelve years after manufacture
        assertEquals(List.of("DUE 2032-05-01"), requirements(none));

        var said = Ledger.declaration();
        said.put("blankMeansNone", true);
        var declared = new Ledger().row("serial", unknown, "manufactured", "2020-05").load(api, said);
        assertEquals("1/0/1/0/0/0", Ledger.rows(declared));
        assertEquals(List.of("DUE 2032-05-01"), requirements(unknown));
    }

    @Test
    void aRowLaysItsCellsOverWhatIsRecordedAndBlankLeavesIt() {
        var serial = Given.serial();
        new Ledger().row("serial", serial, "use", "FUEL", "site", "A" + serial, "site_kind", "DEPOT").load(api,
                Ledger.declaration());
        // of two moves at one moment the first would stand, and both be told
        clock.set(clock.instant().plusSeconds(1));
        var changed = new Ledger().row("serial", serial, "tare", "17.4 lb", "water_capacity", "", "use", "", "site",
                "B" + serial, "site_kind", "DEPOT").load(api, Ledger.declaration());
        assertEquals("1/0/1/0/0/0", Ledger.rows(changed));
        assertEquals("17.400 47.6 lb FUEL B" + serial, jdbc.sql("""
                select concat_ws(' ', c.tare_lb, c.water_capacity, c.use, s.code) from container c
                join placement p on p.container_id = c.id join site s on s.id = p.site_id where c.serial = ?""")
                .param(serial).query(String.class).single());
        assertTrue(jdbc.sql("""
                select reason from mark_correction m join container c on c.id = m.container_id where c.serial = ?
                  and m.field = 'tare'""").param(serial).query(String.class).single().endsWith(changed.id()));
    }

    /** 49 CFR 180.415: one mark of a tank tells of several tests; each is recorded once, also when it comes again. */
    @Test
    void oneMarkOfATankIsRecordedAsItsTests() {
        var serial = Given.serial();
        var tank = new Ledger().row("serial", serial, "specification", "MC-331", "kind", "CARGO_TANK", "manufactured",
                "3-10", "water_capacity", "3000 gal", "last_test_mark", "10-25 P, V, L");
        Ledger.committed(api, Ledger.checked(api, tank.csv(), Ledger.declaration()), "ABORT");
        var again = Ledger.checked(api, tank.csv(), Ledger.declaration());
        assertEquals("1/0/0/1/0/0", Ledger.rows(again));
        assertEquals(List.of("L 2025-10-01", "P 2025-10-01", "V 2025-10-01"), jdbc.sql("""
                select q.method || ' ' || q.month from requalification q join container c on c.id = q.container_id
                where c.serial = ? order by 1""").param(serial).query(String.class).list());
    }
}
