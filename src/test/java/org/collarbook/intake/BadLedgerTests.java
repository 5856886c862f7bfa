package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Ledgers and rows that cannot be accepted: each is told where and why, nothing is stored, the service goes on. */
@RegisterTest
class BadLedgerTests {

    private final Api api;
    private final Tables tables;

    BadLedgerTests(Api api, Tables tables) {
        this.api = api;
        this.tables = tables;
    }

    private Answer refused(byte[] file, String code, long line) {
        var answer = new Answer[1];
        tables.unchangedBy(() -> answer[0] = Ledger.handIn(api, file, Ledger.declaration()).expectProblem(400, code));
        assertEquals(line, answer[0].at("/line").asLong());
        assertEquals(200, api.anonymous().get("/actuator/health").status());
        return answer[0];
    }

    private Answer refused(String file, String code, long line) {
        return refused(file.getBytes(StandardCharsets.UTF_8), code, line);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', nullValues = "-", quoteCharacter = '"', textBlock = """
            specification    | DOT-4XX240    | UNKNOWN_SPECIFICATION
            specification    | -             | MISSING
            serial           | -             | MISSING
            serial           | AB\u200b77      | INVALID_SERIAL
            serial           | \uff21B77       | INVALID_SERIAL
            maker            | Q\u00adX        | INVALID_MAKER
            tag              | T\u03011\u200b   | INVALID_TAG
            manufactured     | 13-04         | INVALID_MONTH
            manufactured     | 2027-05       | IN_THE_FUTURE
            water_capacity   | -47.6 lb      | INVALID_WATER_CAPACITY
            water_capacity   | 47.6          | INVALID_WATER_CAPACITY
            water_capacity   | 47,6 lb       | INVALID_WATER_CAPACITY
            tare             | seventeen     | INVALID_TARE
            tare             | 17,2 lb       | INVALID_TARE
            tare             | TW 17,2       | INVALID_TARE
            service_pressure | -1            | INVALID_SERVICE_PRESSURE
            kind             | BOTTLE        | UNKNOWN_KIND
            kind             | CARGO_TANK    | KIND_CONTRADICTS_SPECIFICATION
            use              | FORKLIFT      | UNKNOWN_WORD
            installation     | ATTIC         | UNKNOWN_WORD
            exclusive        | perhaps       | UNKNOWN_WORD
            coated           | 2             | UNKNOWN_WORD
            lading           | 1%            | INVALID_LADING
            latitude         | north         | INVALID_COORDINATE
            last_test_mark   | 13-12E        | INVALID_MARK
            last_test_mark   | 3-12Q         | INVALID_MARK
            last_test_mark   | 3-2003E       | TEST_BEFORE_MANUFACTURE
            last_test_month  | 2003-03       | TEST_BEFORE_MANUFACTURE
            last_test_month  | 2027-03       | IN_THE_FUTURE
            last_test_month  | March         | INVALID_MONTH
            rin              | B45           | INVALID_RIN
            rin              | B045          | RIN_WITHOUT_TEST
            filled_on        | 20/05/2021    | INVALID_DATE
            filled_on        | 2021-02-30    | INVALID_DATE
            filled_on        | 2026-12-24    | IN_THE_FUTURE
            filled_on        | 2004-04-30    | BEFORE_MANUFACTURE
            site_name        | North dock    | MISSING
            """)
    void aRowIsRefusedByColumnAndCode(String column, String cell, String code) {
        var answer = Ledger.checked(api, new Ledger().row().row(column, cell == null ? "" : cell).csv(), null);
        assertEquals("2/1/0/0/1/0", Ledger.rows(answer));
        var problem = api.as(Role.CLERK).get(answer.text("/links/refused")).expect(200).at("/items/0/problems")
                .findValuesAsString("code");
        assertTrue(problem.contains(code), problem.toString());
        var where = column.equals("site_name") ? "site" : column;
        assertTrue(answer.body().contains("\"line\":3,\"column\":\"" + where + "\",\"code\":\"" + code + "\""),
                answer.body());
    }

    @Test
    void aMarkWithSeveralReadingsIsAmbiguousAndToldWithAllOfThem() {
        // two digits on a collar of 1912 may be of 1915 or 2015
        var answer = Ledger
                .checked(api, new Ledger().row("manufactured", "1912-01", "last_test_mark", "3-15E").csv(), null);
        assertEquals("1/0/0/0/0/1", Ledger.rows(answer));
        assertEquals("2 last_test_mark AMBIGUOUS_MARK", Ledger.firstProblem(answer));
        assertTrue(answer.text("/problems/0/accepted").contains("3-1915 E or 3-2015 E"), answer.body());
    }

    @Test
    void aSerialOfTenThousandCharactersIsRefusedAndNotRepeated() {
        var answer = Ledger.checked(api, new Ledger().row("serial", "9".repeat(10_000)).csv(), null);
        assertEquals("2 serial INVALID_SERIAL", Ledger.firstProblem(answer));
        assertTrue(answer.body().length() < 2_000);
    }

    @Test
    void cellsWithControlCharactersAreRefused() {
        var answer = Ledger.checked(api, new Ledger().row("owner", "a\0b").row("serial", "A\0B").csv(), null);
        assertEquals("2/0/0/0/2/0", Ledger.rows(answer));
    }

    @Test
    void theHeaderIsRefusedWithEveryColumnThatIsWrongAndTheListOfKnownOnes() {
        var answer = refused("specification,colour,maker,maker\nDOT-4BA240,red,KVR,KVR\n", "LEDGER_HEADER", 1);
        var codes = answer.at("/errors").findValuesAsString("code");
        assertEquals(List.of("UNKNOWN_COLUMN", "DUPLICATE_COLUMN", "MISSING"), codes);
        assertEquals(LedgerColumn.values().length, answer.at("/columns").size());
        refused("a,".repeat(1_000_000) + "b\n1\n", "ROW_TOO_LONG", 1);
    }

    @Test
    void aFileWithoutRowsIsRefused() {
        refused("", "EMPTY_LEDGER", 1);
        refused("\n", "EMPTY_LEDGER", 1);
        refused("specification,serial", "NO_ROWS", 2);
        refused("specification,serial\r\n\r\n", "NO_ROWS", 2);
        refused("specification,serial\n,\n , ,\n", "NO_ROWS", 2);
    }

    @Test
    void anotherEncodingIsToldByItsFirstLine() {
        var latin = new Ledger().row("owner", "Osterfen").row("owner", "Österfen").csv()
                .getBytes(StandardCharsets.ISO_8859_1);
        refused(latin, "WRONG_ENCODING", 3);
        refused("specification,serial\n".getBytes(StandardCharsets.UTF_16), "WRONG_ENCODING", 1);
        // cut in the middle of a character
        var utf8 = new Ledger().row("owner", "Ö").csv().getBytes(StandardCharsets.UTF_8);
        refused(Arrays.copyOf(utf8, utf8.length - 3), "WRONG_ENCODING", 2);
    }

    @Test
    void aRowOfFiftyMegabytesIsRefusedWithItsLine() {
        refused("specification,serial\nDOT-4BA240,1\nDOT-4BA240," + "9".repeat(50_000_000) + "\n", "ROW_TOO_LONG", 3);
        refused("specification,serial\nDOT-4BA240,\"" + "9\n".repeat(5_000_000), "ROW_TOO_LONG", 2);
    }

    @Test
    void aFileCutOffIsTold() {
        refused("specification,serial\nDOT-4BA240,1\nDOT-4BA240,\"12", "UNCLOSED_QUOTE", 3);
        refused("specification,serial\nDOT-4BA240,\"12\"3\nDOT-4BA240,1\n", "MALFORMED_QUOTES", 2);
        var whole = new Ledger().row().row().csv();
        var answer = Ledger.checked(api, whole.substring(0, whole.lastIndexOf("47.6")), null);
        assertEquals("2/1/0/0/1/0", Ledger.rows(answer));
        assertEquals("3 specification WRONG_CELL_COUNT", Ledger.firstProblem(answer));
    }

    @Test
    void aDeclarationThatCannotBeKeptIsRefused() {
        var said = Ledger.declaration();
        said.put("declaredBy", " ");
        said.put("declaredOn", "2027-01-01");
        said.put("zone", "Mars/Olympus");
        said.put("jurisdiction", "us");
        said.put("bareMonthMethod", "LICKING");
        said.put("service", Map.of("lading", "l p g"));
        tables.unchangedBy(() -> assertEquals(Map.of("/declaration/declaredBy", "MISSING", "/declaration/declaredOn",
                "IN_THE_FUTURE", "/declaration/zone", "UNKNOWN_ZONE", "/declaration/jurisdiction",
                "INVALID_JURISDICTION", "/declaration/bareMonthMethod", "UNKNOWN_WORD",
                "/declaration/service/lading", "INVALID_LADING"),
                Ledger.handIn(api, new Ledger().row().csv(), said)
                        .expectProblem(400, "INVALID_INPUT").errors()));
        said.clear();
        said.putAll(Ledger.declaration());
        said.put("declaredOn", "1899-12-31");
        tables.unchangedBy(() -> assertEquals(Map.of("/declaration/declaredOn", "OUT_OF_RANGE"), Ledger.handIn(api,
                new Ledger().row().csv(), said).expectProblem(400, "INVALID_INPUT").errors()));
        Ledger.handIn(api, new Ledger().row().csv(), Map.of("declaredBy", "x", "colour", "red")).expectProblem(400,
                "INVALID_INPUT");
        assertEquals(Map.of("/declaration", "OUT_OF_RANGE"), Ledger.handIn(api, new Ledger().row().csv(),
                Map.of("statement", "x".repeat(1_000_000))).expectProblem(400, "INVALID_INPUT").errors());
        api.as(Role.CLERK).with("Content-Type", "multipart/form-data; boundary=gap").post("/api/imports", "--gap--\r\n")
                .expect(400);
        api.as(Role.FILLER).post("/api/imports", "").expectProblem(403, "FORBIDDEN");
    }
}
