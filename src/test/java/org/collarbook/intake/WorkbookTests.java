package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Consumer;

import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.collarbook.access.Role;
import org.collarbook.platform.Sha256;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.dhatim.fastexcel.Workbook;
import org.junit.jupiter.api.Test;

/** Workbooks made by two libraries that are not ours (Apache POI, fastexcel), handed in as ledgers. */
@RegisterTest
class WorkbookTests {

    private final Api api;
    private final Tables tables;

    WorkbookTests(Api api, Tables tables) {
        this.api = api;
        this.tables = tables;
    }

    static void fill(Sheet sheet, int from, Object... cells) {
        var row = sheet.createRow(from);
        for (int i = 0; i < cells.length; i++) {
            switch (cells[i]) {
                case Boolean truth -> row.createCell(i).setCellValue(truth);
                case Number number -> row.createCell(i).setCellValue(number.doubleValue());
                case LocalDate day -> row.createCell(i).setCellValue(day);
                case String text when text.startsWith("=") -> row.createCell(i).setCellFormula(text.substring(1));
                case String text when !text.isEmpty() -> row.createCell(i).setCellValue(text);
                default -> {
                    // a cell that is not there
                }
            }
        }
    }

    static void format(XSSFWorkbook workbook, Row row, int cell, String code) {
        var style = workbook.createCellStyle();
        style.setDataFormat(workbook.createDataFormat().getFormat(code));
        row.getCell(cell).setCellStyle(style);
    }

    static byte[] workbook(Consumer<XSSFWorkbook> filled) {
        try (var workbook = new XSSFWorkbook(); var out = new ByteArrayOutputStream()) {
            filled.accept(workbook);
            workbook.write(out);
            return out.toByteArray();
        } catch (IOException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private Answer refused(byte[] file, String code, Map<String, String> parts) {
        var answer = new Answer[1];
        tables.unchangedBy(() -> answer[0] = Ledger.handIn(api, file, null, parts).expectProblem(400, code));
        assertEquals(200, api.anonymous().get("/actuator/health").status());
        return answer[0];
    }

    private Answer refused(byte[] file, String code) {
        return refused(file, code, Map.of());
    }

    private Answer container(String serial) {
        return api.as(Role.CLERK).get("/api/containers?serial=" + serial).expect(200);
    }

    @Test
    void cellsAreReadAsAPersonSeesThem() {
        long number = 10_000_000 + Math.floorMod(UUID.randomUUID().hashCode(), 1_000_000);
        var file = workbook(workbook -> {
            var sheet = workbook.createSheet("Bestand");
            fill(sheet, 0, "specification", "serial", "manufactured", "water_capacity", "tare", "coated", "filled_on",
                    "site_name", "owner");
            fill(sheet, 1, "DOT-4BA240", number, LocalDate.of(2004, 5, 17), 47.6, 17, true, LocalDate.of(2026, 3, 2),
                    "", "=\"distri\"&\"butor\"");
            format(workbook, sheet.getRow(1), 1, "0000000000");
            format(workbook, sheet.getRow(1), 2, "mmm-yy");
            format(workbook, sheet.getRow(1), 3, "0.0\" lb\"");
            format(workbook, sheet.getRow(1), 4, "0.0 \"lb\"");
            format(workbook, sheet.getRow(1), 6, "m/d/yyyy");
            fill(sheet, 3, "DOT-4BA240", 123_456_000_000d + number, "5-04", "47.6 lb", "", false);
            sheet.getRow(3).setZeroHeight(true);
            workbook.getCreationHelper().createFormulaEvaluator().evaluateAll();
        });
        var checked = Ledger.checked(api, file, Ledger.declaration());
        assertEquals("2/2/0/0/0/0", Ledger.rows(checked), checked.body());
        assertEquals("Bestand", checked.text("/sheet"));
        assertEquals(file.length, checked.at("/bytes").asInt());
        assertEquals(HexFormat.of().formatHex(Sha256.of(file)), checked.text("/sha256"));
        var lines = api.as(Role.CLERK).get(checked.text("/links/lines")).expect(200);
        assertEquals("[2, 4]", lines.at("/items").findValuesAsString("line").toString());
        Ledger.committed(api, checked, "ABORT");
        var found = container("00" + number);
        assertTrue(found.body().contains("\"00" + number + "\""), found.body());
        assertTrue(found.body().contains("2004-05"), found.body());
        assertTrue(found.body().contains("47.6 lb"), found.body());
        assertTrue(container(String.valueOf(123_456_000_000L + number)).body().contains("5-04"));
    }

    @Test
    void dayMonthAndErrorCellsThatNobodyCanReadAreRefusedByRow() {
        var file = workbook(workbook -> {
            var sheet = workbook.createSheet();
            fill(sheet, 0, "specification", "serial", "manufactured", "filled_on", "owner");
            // "5-04" and "5-45" as a spreadsheet takes them that was given no text
            fill(sheet, 1, "DOT-4BA240", Given.serial(), LocalDate.of(2026, 5, 4));
            format(workbook, sheet.getRow(1), 2, "d-mmm");
            fill(sheet, 2, "DOT-4BA240", LocalDate.of(2045, 5, 1));
            format(workbook, sheet.getRow(2), 1, "mmm-yy");
            fill(sheet, 3, "DOT-4BA240", Given.serial(), "5-04", LocalDate.of(2026, 3, 1));
            format(workbook, sheet.getRow(3), 3, "mmm yyyy");
            fill(sheet, 4, "DOT-4BA240", Given.serial(), "5-04", "", "=1/0");
            fill(sheet, 5, "DOT-4BA240", Given.serial(), "5-04", "", "=NA()");
            workbook.getCreationHelper().createFormulaEvaluator().evaluateAll();
            fill(sheet, 6, "DOT-4BA240", Given.serial(), "5-04", "", "=\"never \"&\"computed\"");
            fill(sheet, 7, "DOT-4BA240", 123_456_789_012_345_678d);
        });
        var checked = Ledger.checked(api, file, null);
        assertEquals("7/0/0/0/7/0", Ledger.rows(checked));
        assertEquals("[INVALID_MONTH, DATE_FOR_A_SIGN, INVALID_DATE, ERROR_VALUE, ERROR_VALUE, ERROR_VALUE,"
                + " DIGITS_LOST]", checked.at("/problems").findValuesAsString("code").toString());
        assertEquals("[4-May, May-2045, Mar-2026, #DIV/0!, #N/A, #NOT-COMPUTED!, 1.23456789012346E+17]",
                checked.at("/problems").findValuesAsString("found").toString());
    }

    @Test
    void whichSheetIsToldWhereSeveralHaveRows() {
        Consumer<XSSFWorkbook> two = workbook -> {
            fill(workbook.createSheet("Cylinders"), 0, "specification", "serial");
            fill(workbook.getSheetAt(0), 1, "DOT-4BA240", Given.serial());
            fill(workbook.createSheet("Tanks"), 0, "specification", "serial", "kind");
            fill(workbook.getSheetAt(1), 1, "ASME", Given.serial(), "STATIONARY_TANK");
            fill(workbook.getSheetAt(1), 2, "ASME", Given.serial(), "STATIONARY_TANK");
            workbook.createSheet("Empty");
            workbook.createSheet("Lists");
            fill(workbook.getSheetAt(3), 0, "a", "b");
            workbook.setSheetHidden(3, true);
        };
        var answer = refused(workbook(two), "WHICH_SHEET");
        assertEquals("[\"Cylinders\",\"Tanks\",\"Empty\",\"Lists\"]", answer.at("/sheets").toString());
        assertEquals("Cylinders, Tanks", answer.text("/errors/0/found"));
        assertEquals("2/2/0/0/0/0", Ledger.rows(Ledger.checked(api, workbook(two), null, Map.of("sheet", "tanks"))));
        refused(workbook(two), "UNKNOWN_SHEET", Map.of("sheet", "Trucks"));
        refused(workbook(two), "EMPTY_LEDGER", Map.of("sheet", "Empty"));
        refused(workbook(two.andThen(workbook -> workbook.removeSheetAt(0)).andThen(workbook -> workbook
                .removeSheetAt(0))), "EMPTY_LEDGER");
        assertEquals("1/1/0/0/0/0", Ledger.rows(Ledger.checked(api, workbook(two.andThen(workbook -> {
            fill(workbook.createSheet("Ledger"), 4, "specification", "serial");
            fill(workbook.getSheet("Ledger"), 5, "DOT-4BA240", Given.serial());
        })), null)));
    }

    /** Under a format of its own a number is read as a date or with its words, else as it is. */
    @Test
    void aNumberLargerThanASpreadsheetHoldsBreaksTheWorkbook() {
        for (var format : List.of("General", "0.0\" lb\"", "yyyy-mm-dd")) {
            var file = workbook(workbook -> {
                var sheet = workbook.createSheet();
                fill(sheet, 0, "specification", "serial", "water_capacity");
                fill(sheet, 1, "DOT-4BA240", Given.serial(), 47.6);
                format(workbook, sheet.getRow(1), 2, format);
                sheet.getRow(1).getCell(2).getCTCell().setV("-1E999");
            });
            refused(file, "BROKEN_WORKBOOK");
        }
    }

    @Test
    void aYearAloneIsNoMonth() {
        var file = workbook(workbook -> {
            var sheet = workbook.createSheet();
            fill(sheet, 0, "specification", "serial", "manufactured", "filled_on");
            fill(sheet, 1, "DOT-4BA240", Given.serial(), LocalDate.of(2017, 12, 31));
            format(workbook, sheet.getRow(1), 2, "yyyy");
            fill(sheet, 2, "DOT-4BA240", Given.serial(), "5-04", LocalDate.of(2017, 12, 31));
            format(workbook, sheet.getRow(2), 3, "yyyy");
        });
        var checked = Ledger.checked(api, file, null);
        assertEquals("2/0/0/0/2/0", Ledger.rows(checked), checked.body());
        assertEquals("[2017, 2017]", checked.at("/problems").findValuesAsString("found").toString());
    }

    @Test
    void mergedCellsAreRefusedWithTheirRowAndThoseBesideTheTableAreNot() {
        Consumer<XSSFWorkbook> plain = workbook -> {
            var sheet = workbook.createSheet();
            fill(sheet, 0, "specification", "serial", "site_name");
            fill(sheet, 1, "DOT-4BA240", Given.serial());
            fill(sheet, 2, "DOT-4BA240", Given.serial());
            sheet.addMergedRegion(new CellRangeAddress(1, 2, 4, 5));
        };
        Ledger.checked(api, workbook(plain), null);
        var answer = refused(workbook(plain.andThen(workbook -> workbook.getSheetAt(0)
                .addMergedRegion(new CellRangeAddress(1, 2, 2, 2)))), "MERGED_CELLS");
        assertEquals(2, answer.at("/line").asInt());
        assertEquals("row 2, column 3", answer.text("/errors/0/found"));
    }

    @Test
    void aRowWithMoreCellsThanHeadingsIsRefusedAndAHeaderAloneIsNoLedger() {
        var file = workbook(workbook -> {
            fill(workbook.createSheet(), 0, "specification", "serial");
            fill(workbook.getSheetAt(0), 1, "DOT-4BA240", Given.serial(), "", "note");
        });
        assertEquals("2 specification WRONG_CELL_COUNT", Ledger.firstProblem(Ledger.checked(api, file, null)));
        refused(workbook(workbook -> fill(workbook.createSheet(), 0, "specification", "serial")), "NO_ROWS");
        refused(workbook(workbook -> fill(workbook.createSheet(), 0, "specification", "", "serial")), "LEDGER_HEADER");
    }

    @Test
    void theDatesOfTheOldMacintoshCountFrom1904() {
        var file = workbook(workbook -> {
            workbook.getCTWorkbook().addNewWorkbookPr().setDate1904(true);
            var sheet = workbook.createSheet();
            fill(sheet, 0, "specification", "serial", "filled_on");
            // ECMA-376 part 1, 18.17.4.1: in the 1904 date system 1 January 1904 is 0
            fill(sheet, 1, "DOT-4BA240", Given.serial(), LocalDate.of(2027, 3, 2).toEpochDay()
                    - LocalDate.of(1904, 1, 1).toEpochDay());
            format(workbook, sheet.getRow(1), 2, "yyyy-mm-dd");
        });
        var problem = Ledger.checked(api, file, null).at("/problems/0");
        assertEquals("IN_THE_FUTURE", problem.at("/code").asString());
        assertEquals("2027-03-02", problem.at("/found").asString());
    }

    @Test
    void whatIsNoWorkbookIsRefused() throws Exception {
        var good = workbook(workbook -> fill(workbook.createSheet(), 0, "serial"));
        refused(Arrays.copyOf(good, good.length / 2), "BROKEN_WORKBOOK");
        refused(Arrays.copyOf(good, 30), "BROKEN_WORKBOOK");
        refused(Zips.of(Map.of("letter.txt", "hello")), "NO_WORKBOOK");
        refused(Zips.of(Map.of()), "NO_WORKBOOK");
        assertTrue(refused(Zips.of(Map.of("mimetype", "application/vnd.oasis.opendocument.spreadsheet", "content.xml",
                "<a/>")), "NO_WORKBOOK").body().contains(".ods"));
        var old = new ByteArrayOutputStream();
        try (var workbook = new HSSFWorkbook()) {
            fill(workbook.createSheet(), 0, "serial");
            workbook.write(old);
        }
        refused(old.toByteArray(), "OLD_OR_LOCKED_WORKBOOK");
        var locked = new ByteArrayOutputStream();
        try (var files = new POIFSFileSystem()) {
            var encryptor = new EncryptionInfo(EncryptionMode.agile).getEncryptor();
            encryptor.confirmPassword("a password");
            try (var out = encryptor.getDataStream(files)) {
                out.write(good);
            }
            files.writeFilesystem(locked);
        }
        refused(locked.toByteArray(), "OLD_OR_LOCKED_WORKBOOK");
    }

    @Test
    void entitiesAndBombsInAWorkbookAreRefused() {
        var sheet = "<worksheet><sheetData><row><c t=\"inlineStr\"><is><t>%s</t></is></c></row></sheetData></worksheet>";
        Ledger.handIn(api, Zips.workbook(sheet.formatted("specification")), null).expectProblem(400, "LEDGER_HEADER");
        var fetches = "<!DOCTYPE w [<!ENTITY x SYSTEM \"file:///etc/passwd\">]>" + sheet.formatted("&x;");
        refused(Zips.workbook(fetches), "BROKEN_WORKBOOK");
        var laughs = new StringBuilder("<!DOCTYPE w [<!ENTITY l0 \"ha\">");
        for (int i = 1; i < 40; i++) {
            laughs.append("<!ENTITY l").append(i).append(" \"&l").append(i - 1).append(";&l").append(i - 1)
                    .append(";\">");
        }
        refused(Zips.workbook(laughs.append("]>").append(sheet.formatted("&l39;")).toString()), "BROKEN_WORKBOOK");
        refused(Zips.workbook(sheet.formatted("&nothing;")), "BROKEN_WORKBOOK");
        refused(Zips.workbook(sheet.formatted("a".repeat(100_000))), "BROKEN_WORKBOOK");
        refused(Zips.workbook("<worksheet a=\"" + "a".repeat(4 << 20) + "\"/>"), "BROKEN_WORKBOOK");
        refused(Zips.workbook("<worksheet><!--" + " ".repeat(4 << 20) + "--></worksheet>"), "BROKEN_WORKBOOK");
        refused(Zips.workbook("<worksheet><sheetData>" + "<row/>".repeat(20 << 20) + "</sheetData></worksheet>"),
                "BROKEN_WORKBOOK");
        refused(Zips.workbook("<worksheet><sheetData>" + "\n".repeat(80 << 20) + "</sheetData></worksheet>"),
                "TOO_LARGE_UNPACKED");
        refused(Zips.workbook("<worksheet><sheetData><row r=\"2000000\"/></sheetData></worksheet>"), "BROKEN_WORKBOOK");
        refused(Zips.workbook("<worksheet><sheetData><row><c t=\"s\"><v>7</v></c></row></sheetData></worksheet>"),
                "BROKEN_WORKBOOK");
        refused(Zips.workbook("<worksheet><sheetData><row><c><v>1E999999999</v></c></row></sheetData></worksheet>"),
                "BROKEN_WORKBOOK");
    }

    @Test
    void aWorkbookOfFastexcelIsRead() throws IOException {
        var out = new ByteArrayOutputStream();
        var serial = Given.serial();
        try (var workbook = new Workbook(out, "test", null)) {
            var sheet = workbook.newWorksheet("x");
            sheet.value(0, 0, "specification");
            sheet.value(0, 1, "serial");
            sheet.value(0, 2, "filled_on");
            sheet.value(0, 3, "site_name");
            sheet.value(0, 4, "site");
            sheet.value(1, 0, "DOT-4BA240");
            sheet.inlineString(1, 1, serial);
            sheet.value(1, 2, LocalDate.of(2026, 3, 2));
            sheet.style(1, 2).format("yyyy-mm-dd").set();
            sheet.value(1, 3, "North\ndock; \"upper\", a\tb");
            sheet.value(1, 4, "S-" + serial);
        }
        var checked = Ledger.checked(api, out.toByteArray(), null);
        // a line break is a space, the tab is not printable
        assertEquals("1/0/0/0/1/0", Ledger.rows(checked));
        assertEquals("North dock; \"upper\", a\uFFFDb", checked.text("/problems/0/found"));
    }
}
