package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.IntStream;

import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.collarbook.access.Role;
import org.collarbook.compliance.AsKnown;
import org.collarbook.platform.Caution;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

import tools.jackson.databind.JsonNode;

/** Read back by Apache POI, which did not write it. */
@RegisterTest
class ScheduleWorkbookTests {

    private static final Map<String, String> FIELDS = Map.ofEntries(Map.entry("status", "status"),
            Map.entry("requirement", "requirement"), Map.entry("rule", "rule"), Map.entry("kind", "kind"),
            Map.entry("specification", "specification"), Map.entry("maker", "maker"), Map.entry("serial", "serial"),
            Map.entry("size", "size"), Map.entry("tag", "tag"), Map.entry("site", "site"),
            Map.entry("site_name", "siteName"), Map.entry("customer", "customer"), Map.entry("owner", "owner"),
            Map.entry("container_id", "containerId"), Map.entry("jurisdiction", "jurisdiction"));

    private final Api api;
    private final Given given;
    private final ScheduleRows rows;
    private final RuleBook rules;
    private final AsKnown asKnown;
    private final JdbcClient owner;
    private final Clock clock;

    ScheduleWorkbookTests(Api api, Given given, ScheduleRows rows, RuleBook rules, AsKnown asKnown, Flyway flyway,
            Clock clock) {
        this.api = api;
        this.given = given;
        this.rows = rows;
        this.rules = rules;
        this.asKnown = asKnown;
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
        this.clock = clock;
    }

    private UUID siteWith(String... manufactured) {
        var site = given.site(given.customer());
        for (var month : manufactured) {
            var body = Given.cylinder();
            body.put("manufactured", month);
            body.put("tag", "=1+1&<\"é" + Given.serial());
            given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        }
        return site;
    }

    private XSSFWorkbook read(String query) throws IOException {
        var answer = api.as(Role.CLERK).get("/api/schedule?format=xlsx&" + query).expect(200);
        assertThat(answer.contentType()).isEqualTo(ScheduleWorkbook.TYPE);
        assertThat(answer.header("Content-Disposition")).contains("schedule.xlsx");
        return new XSSFWorkbook(new ByteArrayInputStream(answer.bytes()));
    }

    private static @Nullable String text(@Nullable Cell cell) {
        if (cell == null || cell.getCellType() == CellType.BLANK) {
            return null;
        }
        assertThat(cell.getCellType()).isEqualTo(CellType.STRING);
        return cell.getStringCellValue();
    }

    private static LocalDate date(Cell cell) {
        assertThat(cell.getCellType()).isEqualTo(CellType.NUMERIC);
        assertThat(DateUtil.isCellDateFormatted(cell)).isTrue();
        return cell.getLocalDateTimeCellValue().toLocalDate();
    }

    private static void assertSame(Row row, Map<String, Integer> columns, JsonNode line) {
        FIELDS.forEach((column, field) -> assertThat(text(row.getCell(columns.get(column)))).as(column)
                .isEqualTo(line.path(field).isMissingNode() ? null : line.path(field).asString()));
        assertThat(date(row.getCell(columns.get("due"))))
                .isEqualTo(YearMonth.parse(line.path("due").asString()).atEndOfMonth());
        assertThat(date(row.getCell(columns.get("last_day")))).isEqualTo(line.path("lastDay").asString());
        assertThat(date(row.getCell(columns.get("manufactured"))))
                .isEqualTo(YearMonth.parse(line.path("manufactured").asString()).atEndOfMonth());
    }

    private static Map<String, Integer> columns(XSSFSheet sheet) {
        var columns = new HashMap<String, Integer>();
        sheet.getRow(0).forEach(cell -> columns.put(cell.getStringCellValue(), cell.getColumnIndex()));
        return columns;
    }

    /** A cell that begins with = is text: SpreadsheetML has another element for formulas (ISO/IEC 29500-1, 18.3.1.40). */
    @Test
    void hasTheRowsOfTheList() throws IOException {
        var site = siteWith("2015-03", "2015-01", "2014-12");
        try (var workbook = read("site=" + site)) {
            var sheet = workbook.getSheet("Schedule");
            var lines = api.as(Role.CLERK).get("/api/schedule?site=" + site).expect(200).at("/items");
            assertThat(lines).hasSize(3);
            assertThat(sheet.getLastRowNum()).isEqualTo(3);
            for (int i = 0; i < 3; i++) {
                assertSame(sheet.getRow(i + 1), columns(sheet), lines.get(i));
            }
            assertThat(text(sheet.getRow(1).getCell(columns(sheet).get("tag")))).startsWith("=1+1&<\"é");
            assertThat(sheet.getPaneInformation().isFreezePane()).isTrue();
            assertThat(sheet.getPaneInformation().getHorizontalSplitPosition()).isEqualTo((short) 1);
            assertThat(sheet.getCTWorksheet().getAutoFilter().getRef()).isEqualTo("A1:S4");
            assertThat(workbook.getActiveSheetIndex()).isEqualTo(workbook.getSheetIndex(ReadFirst.NAME));
            assertThat(toldFirst(workbook)).contains(Caution.TEXT, "2026-11-25T12:00:00Z", rules.hash(), "3",
                    "{site=" + site + "}");
        }
    }

    private static List<String> toldFirst(XSSFWorkbook workbook) {
        var first = workbook.getSheet(ReadFirst.NAME);
        return IntStream.rangeClosed(0, first.getLastRowNum())
                .mapToObj(row -> first.getRow(row).getCell(1).getStringCellValue()).toList();
    }

    /** As if it had been loaded for one day, and today's after it. */
    @Test
    void ofAnEarlierMomentTellsTheRuleBookThatThenAnswered() throws IOException {
        var content = rules.canonicalText();
        var other = RuleBookLoader.ofStored(content.replaceFirst("\"retrieved\":\"\\d{4}", "\"retrieved\":\"2001"),
                rules.engineVersion());
        assertThat(other.hash()).isNotEqualTo(rules.hash());
        owner.sql("insert into rule_book (hash, engine_version, content) values (?, ?, ?)")
                .params(other.hash(), other.engineVersion(), other.canonicalText()).update();
        owner.sql("""
                insert into rule_book_load (rule_book_id, loaded_at)
                select id, case when hash = ? then timestamptz '2026-05-10T00:00:00Z'
                    else '2026-05-11T00:00:00Z' end
                from rule_book where hash in (?, ?) and engine_version = ?""")
                .params(other.hash(), other.hash(), rules.hash(), rules.engineVersion()).update();
        var site = siteWith("2015-03");
        try (var then = read("knownAt=2026-05-10T12:00:00Z&site=" + site);
                var now = read("knownAt=2026-05-11T12:00:00Z&site=" + site)) {
            assertThat(toldFirst(then)).contains(other.hash()).doesNotContain(rules.hash());
            assertThat(toldFirst(now)).contains(rules.hash());
        } finally {
            owner.sql("delete from rule_book_load where loaded_at < '2026-05-12'").update();
            owner.sql("delete from rule_book where hash = ?").param(other.hash()).update();
        }
    }

    @Test
    void eachYearMayHaveASheetOfItsOwn() throws IOException {
        var site = siteWith("2015-03", "2015-01", "2014-12", "2010-02");
        try (var workbook = read("sheets=year&site=" + site)) {
            assertThat(names(workbook)).containsExactly("2022", "2026", "2027", ReadFirst.NAME);
            assertThat(workbook.getSheet("2027").getLastRowNum()).isEqualTo(2);
            assertThat(workbook.getSheet("2026").getCTWorksheet().getAutoFilter().getRef()).isEqualTo("A1:S2");
        }
        var accepted = api.as(Role.CLERK).with("Accept", ScheduleWorkbook.TYPE).get("/api/schedule?site=" + site)
                .expect(200);
        try (var workbook = new XSSFWorkbook(new ByteArrayInputStream(accepted.bytes()))) {
            assertThat(names(workbook)).containsExactly("Schedule", ReadFirst.NAME);
        }
    }

    private static List<String> names(XSSFWorkbook workbook) {
        var names = new ArrayList<String>();
        workbook.sheetIterator().forEachRemaining(sheet -> names.add(sheet.getSheetName()));
        return names;
    }

    /** As of a register of more rows than a sheet may have. */
    @Test
    void goesOnOnAFurtherSheet() throws IOException {
        var site = siteWith("2015-03", "2015-01", "2014-12", "2015-05", "2015-06");
        var filter = new ScheduleFilter(null, null, site, null, null, null, null, null, null, null, null);
        var out = new ByteArrayOutputStream();
        new ScheduleWorkbook(rows, asKnown, 2).write(Source.stored(clock.instant()), filter, null, null, out);
        try (var workbook = new XSSFWorkbook(new ByteArrayInputStream(out.toByteArray()))) {
            assertThat(names(workbook)).containsExactly("Schedule", "Schedule (2)", "Schedule (3)", ReadFirst.NAME);
            assertThat(IntStream.range(0, 3).map(i -> workbook.getSheetAt(i).getLastRowNum())).containsExactly(2, 2, 1);
            assertThat(columns(workbook.getSheetAt(2))).hasSize(ScheduleSheets.COLUMNS.length);
        }
    }

    @Test
    void nothingIsAHeaderWithoutRows() throws IOException {
        try (var workbook = read("site=" + given.site(null))) {
            assertThat(workbook.getSheet("Schedule").getLastRowNum()).isZero();
        }
    }

    @Test
    void refusesWhatItDoesNotKnow() {
        assertThat(api.as(Role.CLERK).get("/api/schedule?format=xlsx&sheets=month&plain=true")
                .expectProblem(400, "INVALID_INPUT").errors())
                .containsExactlyInAnyOrderEntriesOf(Map.of("sheets", "UNKNOWN_WORD", "plain", "UNKNOWN_PARAMETER"));
    }
}
