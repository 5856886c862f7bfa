package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Map;
import java.util.zip.GZIPOutputStream;

import org.collarbook.platform.Sha256;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;

/** Files as they come: CSV in its variants (RFC 4180), gzipped (RFC 1952), and what is neither. */
@RegisterTest
class LedgerFilesTests {

    private final Api api;
    private final Tables tables;

    LedgerFilesTests(Api api, Tables tables) {
        this.api = api;
        this.tables = tables;
    }

    static byte[] gzipped(byte[]... members) {
        var all = new ByteArrayOutputStream();
        for (var member : members) {
            try (var gzip = new GZIPOutputStream(all)) {
                gzip.write(member);
            } catch (IOException impossible) {
                throw new UncheckedIOException(impossible);
            }
        }
        return all.toByteArray();
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private Answer refused(byte[] file, String code) {
        var answer = new Answer[1];
        tables.unchangedBy(() -> answer[0] = Ledger.handIn(api, file, Ledger.declaration()).expectProblem(400, code));
        assertEquals(200, api.anonymous().get("/actuator/health").status());
        return answer[0];
    }

    private void refused(byte[] file, String code, long line) {
        assertEquals(line, refused(file, code).at("/line").asLong());
    }

    private void read(String rows, String csv) {
        assertEquals(rows, Ledger.rows(Ledger.checked(api, csv, null)), csv);
    }

    @Test
    void aGzippedLedgerIsReadAndTheReportTellsOfTheFileAsItWasHandedIn() {
        var csv = bytes(new Ledger().row().row().csv());
        var packed = gzipped(csv);
        var report = Ledger.checked(api, packed, Ledger.declaration());
        assertEquals("2/2/0/0/0/0", Ledger.rows(report));
        assertEquals(packed.length, report.at("/bytes").asInt());
        assertEquals(HexFormat.of().formatHex(Sha256.of(packed)), report.text("/sha256"));
        assertEquals("2/2/0/0/0/0", Ledger.rows(Ledger.committed(api, report, "ABORT")));
        // RFC 1952, 2.2: a file is a series of members
        var members = gzipped(Arrays.copyOf(csv, 40), Arrays.copyOfRange(csv, 40, csv.length));
        assertEquals("2/0/0/2/0/0", Ledger.rows(Ledger.checked(api, members, Ledger.declaration())));
    }

    @Test
    void aGzipThatIsCutOffDamagedOrFollowedBySomethingIsRefused() {
        var packed = gzipped(bytes(new Ledger().row().csv()));
        refused(Arrays.copyOf(packed, packed.length - 1), "BROKEN_GZIP");
        refused(Arrays.copyOf(packed, packed.length / 2), "BROKEN_GZIP");
        refused(Arrays.copyOf(packed, 5), "BROKEN_GZIP");
        refused(Arrays.copyOf(packed, packed.length + 1), "BROKEN_GZIP");
        var damaged = packed.clone();
        damaged[damaged.length - 6] ^= 1;
        refused(damaged, "BROKEN_GZIP");
        refused(gzipped(packed), "BROKEN_GZIP");
        refused(gzipped(new byte[0]), "EMPTY_LEDGER", 1);
    }

    @Test
    void aBombAndACellOfTwoGigabytesAreRefusedEarly() {
        // the same member again and again: 2 GB of one cell, and 2 GB of short rows
        int members = 64;
        var parts = new byte[members + 1][];
        Arrays.fill(parts, "9".repeat(32 << 20).getBytes(StandardCharsets.US_ASCII));
        parts[0] = bytes("specification,serial\nDOT-4BA240,1\nDOT-4BA240,");
        refused(repeated(parts), "ROW_TOO_LONG", 3);
        Arrays.fill(parts, "DOT-4BA240,1\n".repeat(2 << 20).getBytes(StandardCharsets.US_ASCII));
        parts[0] = bytes("specification,serial\n");
        refused(repeated(parts), "TOO_LARGE_UNPACKED");
    }

    private static byte[] repeated(byte[][] parts) {
        var all = new ByteArrayOutputStream();
        all.writeBytes(gzipped(parts[0]));
        var again = gzipped(parts[1]);
        for (int i = 1; i < parts.length; i++) {
            all.writeBytes(again);
        }
        return all.toByteArray();
    }

    @Test
    void anotherEncodingIsToldWithItsLineAndHowToSaveIt() {
        var csv = new Ledger().row("owner", "Osterfen").row("owner", "Österfen").csv();
        for (var charset : new Charset[]{StandardCharsets.UTF_16, StandardCharsets.UTF_16LE,
                StandardCharsets.UTF_16BE}) {
            refused(csv.getBytes(charset), "WRONG_ENCODING", 1);
        }
        refused(csv.getBytes(Charset.forName("windows-1252")), "WRONG_ENCODING", 3);
        var answer = refused(gzipped(csv.getBytes(Charset.forName("windows-1252"))), "WRONG_ENCODING");
        assertTrue(answer.text("/errors/0/accepted").contains("CSV UTF-8"), answer.body());
        read("1/1/0/0/0/0", "\uFEFF" + new Ledger().row("owner", "Österfen").csv());
    }

    @Test
    void whatIsNoTextIsTold() {
        var png = HexFormat.of().parseHex("89504e470d0a1a0a0000000d49484452");
        assertTrue(refused(png, "NOT_A_LEDGER").text("/detail").contains("PNG"));
        refused(bytes("%PDF-1.7\n%"), "NOT_A_LEDGER");
        refused(bytes("specification\0,serial\nDOT-4BA240,1\n"), "NOT_A_LEDGER");
        refused(HexFormat.of().parseHex("d0cf11e0a1b11ae1"), "OLD_OR_LOCKED_WORKBOOK");
        assertEquals(Map.of("sheet", "NO_SHEETS"), Ledger.handIn(api, bytes("serial\n"), null, Map.of("sheet", "x"))
                .expectProblem(400, "INVALID_INPUT").errors());
    }

    @Test
    void theDelimiterIsToldByTheHeaderWhateverStandsInQuotes() {
        var serial = Given.serial();
        read("1/1/0/0/0/0", "\"specification\";\"serial\"\nDOT-4BA240;" + serial + "\n");
        read("1/1/0/0/0/0", "\n\n specification\tSERIAL\nDOT-4BA240\t" + serial + "\n");
        // more commas than semicolons, all of them within quotes; the heading is refused as a whole
        var answer = refused(bytes("specification;serial;\"a,b,c,d\"\nDOT-4BA240;1;x\n"), "LEDGER_HEADER");
        assertEquals("a,b,c,d", answer.text("/errors/0/found"));
        answer = refused(bytes("specification;serial;a,b,c,d,e\nDOT-4BA240;1;x\n"), "LEDGER_HEADER");
        assertEquals("a,b,c,d,e", answer.text("/errors/0/found"));
        // a single column
        answer = refused(bytes("serial\n1\n"), "LEDGER_HEADER");
        assertEquals("MISSING", answer.text("/errors/0/code"));
    }

    /** As a spreadsheet saves what was once written behind its table. */
    @Test
    void aRowOfDelimitersOnlyIsNoRow() {
        var first = Given.serial();
        var second = Given.serial();
        read("2/2/0/0/0/0", ";;\nspecification;serial\n;\nDOT-4BA240;" + first + "\n ; \n;;;;;\nDOT-4BA240;" + second
                + "\n;\n;\n");
        var report = Ledger.checked(api, "specification,serial\n,\nDOT-4BA240," + first + "\n,\nWRONG,1\n,\n", null);
        assertEquals("2/1/0/0/1/0", Ledger.rows(report));
        assertEquals(5, report.at("/problems/0/line").asInt(), report.body());
    }

    @Test
    void linesAreCountedWhateverEndsThem() {
        var serial = Given.serial();
        var row = "DOT-4BA240," + serial;
        var mixed = "specification,serial,owner\r\n" + row + "1,a\n" + row + "2,\"b\nc\"\r" + row + "3,d\r\nbad,"
                + serial
                + "4,e\n";
        var report = Ledger.checked(api, mixed, null);
        assertEquals("4/2/0/0/2/0", Ledger.rows(report));
        // the row with a line break in a cell begins on line 3, the bad one on line 6
        assertEquals("3 owner INVALID_TEXT", Ledger.firstProblem(report));
        assertEquals(6, report.at("/problems/1/line").asInt());
    }

    @Test
    void delimitersBehindTheLastHeadingAreNoColumns() {
        var serial = Given.serial();
        read("1/1/0/0/0/0", "specification,serial,,\nDOT-4BA240," + serial + ",,\n");
        var report = Ledger.checked(api, "specification,serial,,\nDOT-4BA240," + serial + ",,kept where?\nDOT-4BA240,"
                + serial + "9\n", null);
        assertEquals("2/0/0/0/2/0", Ledger.rows(report));
        assertEquals("2 specification CELL_WITHOUT_HEADING", Ledger.firstProblem(report));
        assertEquals("WRONG_CELL_COUNT", report.text("/problems/1/code"));
        var answer = refused(bytes("specification,,serial, \nDOT-4BA240,,1,\n"), "LEDGER_HEADER");
        assertEquals("BLANK_HEADING", answer.text("/errors/0/code"));
        assertEquals("column 2", answer.text("/errors/0/found"));
        assertEquals(1, answer.at("/errors").size());
        refused(bytes("specification,serial,Serial\nDOT-4BA240,1,1\n"), "LEDGER_HEADER");
        refused(bytes("specification,serial" + ",".repeat(1_000_000) + "\n"), "ROW_TOO_LONG", 1);
        refused(bytes("specification,serial" + ",x".repeat(30_000) + "\n"), "LEDGER_HEADER", 1);
    }

    @Test
    void whatASpreadsheetLeftInACellIsRefusedByRow() {
        var ledger = new Ledger().row("owner", "#N/A").row("serial", "#REF!").row("serial", "1.23457E+11")
                .row("serial", "Jan-45").row("serial", "2045-01-01").row("site", "4-May").row("manufactured", "4-May")
                .row("tag", "######");
        var report = Ledger.checked(api, ledger.csv(), null);
        assertEquals("8/0/0/0/8/0", Ledger.rows(report));
        var codes = report.at("/problems").findValuesAsString("code");
        assertEquals("[ERROR_VALUE, ERROR_VALUE, DIGITS_LOST, DATE_FOR_A_SIGN, DATE_FOR_A_SIGN, DATE_FOR_A_SIGN,"
                + " INVALID_MONTH, ERROR_VALUE]", codes.toString());
    }

    @Test
    void aDayUnderAMonthIsItsMonth() {
        var report = Ledger.checked(api, new Ledger().row("manufactured", "2004-05-17").row("manufactured", "May-2004")
                .csv(), null);
        assertEquals("2/2/0/0/0/0", Ledger.rows(report), report.body());
    }

    @Test
    void unitsMayStandInAColumnOfTheirOwn() {
        var ledger = new Ledger()
                .row("water_capacity", "47.6", "water_capacity_unit", "pounds", "tare", "7.71", "tare_unit", "KG")
                .row("water_capacity", "5", "water_capacity_unit", "US gallons", "tare", "TW 17.0")
                .row("water_capacity", "WC 47.6", "water_capacity_unit", "lbs", "tare", "17 lb", "tare_unit", "lbs")
                .row("water_capacity", "", "water_capacity_unit", "lb")
                .row("water_capacity", "5 US gallons", "tare", "7.7 kilograms")
                .row("water_capacity", "47.6 lb", "water_capacity_unit", "kg")
                .row("water_capacity", "47.6").row("water_capacity", "5", "water_capacity_unit", "imp gal")
                .row("water_capacity", "5 imperial gallons").row("water_capacity", "5", "water_capacity_unit", "pints")
                .row("tare", "17.0", "tare_unit", "gal");
        var report = Ledger.checked(api, ledger.csv(), null);
        var codes = report.at("/problems").findValuesAsString("code");
        // NIST SP 811, B.8: the gallon of the United States has 3.785412 L, the imperial one 4.54609 L
        assertEquals("[UNIT_CONTRADICTS, INVALID_WATER_CAPACITY, IMPERIAL_GALLON, IMPERIAL_GALLON, UNKNOWN_UNIT,"
                + " UNKNOWN_UNIT]", codes.toString());
        assertEquals("11/5/0/0/6/0", Ledger.rows(report));
    }
}
