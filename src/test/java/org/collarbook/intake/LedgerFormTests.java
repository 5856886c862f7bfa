package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;

import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.test.context.TestPropertySource;

/** The template, the forms of CSV that are read, and how lines are counted; where no ledger has the template's sites. */
@RegisterTest
@TestPropertySource(properties = "spring.application.name=collarbook-few-rows")
class LedgerFormTests {

    private final Api api;

    LedgerFormTests(Api api) {
        this.api = api;
    }

    @Test
    void theTemplateCanBeHandedInAsItIs() {
        var csv = api.as(Role.CLERK).with("Accept", "text/csv").get("/api/imports/template").expect(200);
        assertTrue(csv.contentType().startsWith("text/csv"));
        assertEquals(csv.body(), api.as(Role.CLERK).get("/api/imports/template?format=csv").expect(200).body());
        var checked = Ledger.checked(api, csv.body(), Ledger.declaration());
        assertEquals("2/2/0/0/0/0", Ledger.rows(checked), checked.body());

        var json = api.as(Role.CLERK).get("/api/imports/template?format=json").expect(200);
        assertEquals(LedgerColumn.words(), json.at("/columns").findValuesAsString("name"));
        assertEquals(json.body(), api.as(Role.CLERK).with("Accept", "application/json").get("/api/imports/template")
                .expect(200).body());
        json.at("/columns").forEach(column -> assertTrue(column.at("/meaning").asString().length() > 10));
    }

    @Test
    void theTemplateAsAWorkbookCanBeHandedInAsItIsAndKeepsWhatIsTyped() throws Exception {
        var template = api.as(Role.CLERK).get("/api/imports/template?format=xlsx").expect(200);
        assertEquals("application/vnd.openxmlformats-officedocument.spreadsheetml.sheet", template.contentType());
        assertEquals(template.contentType(), api.as(Role.CLERK).with("Accept", template.contentType())
                .get("/api/imports/template").expect(200).contentType());
        var checked = Ledger.checked(api, template.bytes(), Ledger.declaration());
        assertEquals("2/2/0/0/0/0", Ledger.rows(checked), checked.body());
        assertEquals("Ledger", checked.text("/sheet"));
        try (var workbook = new XSSFWorkbook(new ByteArrayInputStream(template.bytes()))) {
            var meanings = workbook.getSheet("Columns");
            assertEquals(LedgerColumn.values().length, meanings.getLastRowNum());
            // cells are text, so that no spreadsheet makes a date of 5-04
            assertEquals("@", workbook.getSheet("Ledger").getRow(9).getCell(0).getCellStyle().getDataFormatString());
        }
    }

    @Test
    void aPartThatNobodyReadsIsRefused() {
        var csv = new Ledger().row("serial", Given.serial()).csv().getBytes(StandardCharsets.UTF_8);
        assertEquals(Map.of("/declaraton", "UNKNOWN_PART"),
                Ledger.handIn(api, csv, null, Map.of("declaraton", "{}")).expectProblem(400, "INVALID_INPUT").errors());
        assertEquals(Map.of("/ledger", "TOLD_TWICE"),
                Ledger.handIn(api, csv, null, Map.of("ledger", "serial")).expectProblem(400, "INVALID_INPUT").errors());
    }

    private String lines(Answer checked, String query) {
        var page = api.as(Role.CLERK).get("/api/imports/" + checked.id() + "/lines" + query).expect(200);
        return StreamSupport.stream(page.at("/items").spliterator(), false)
                .map(line -> line.at("/line").asString() + " " + line.at("/outcome").asString())
                .collect(Collectors.joining(", "));
    }

    @Test
    void semicolonsTabsAByteOrderMarkAndLoneCarriageReturnsAreRead() {
        var row = "DOT-4BA240," + Given.serial();
        for (var delimiter : new String[]{",", ";", "\t"}) {
            var csv = "\uFEFFSpecification,SERIAL\n" + row + "\n";
            assertEquals("1/1/0/0/0/0",
                    Ledger.rows(Ledger.checked(api, csv.replace(",", delimiter), null)));
        }
        var old = Ledger.checked(api, "specification,serial\r" + row + "\r" + row + "x\r", null);
        assertEquals("2 NEW, 3 NEW", lines(old, ""));
    }

    @Test
    void aLineIsThePhysicalLineOnWhichTheRowStarts() {
        var a = Given.serial();
        var csv = "specification,serial,owner\r\n\r\nDOT-4BA240," + a + "1,\"two\r\nlines\"\r\n\r\nDOT-4BA240," + a
                + "2,\r\nDOT-4BA240," + a + "3,\r\nbad," + a + "4,\r\nDOT-4BA240," + a + "5,";
        var checked = Ledger.checked(api, csv, null);
        assertEquals("5/3/0/0/2/0", Ledger.rows(checked));
        assertEquals("3 REFUSED, 6 NEW, 7 NEW, 8 REFUSED, 9 NEW", lines(checked, ""));
        assertEquals("3 REFUSED, 8 REFUSED", lines(checked, "?outcome=REFUSED"));
        assertEquals("", lines(checked, "?outcome=CHANGED"));
        assertEquals("3 REFUSED, 6 NEW", lines(checked, "?size=2"));
        var first = api.as(Role.CLERK).get("/api/imports/" + checked.id() + "/lines?size=2").text("/next");
        assertEquals("7 NEW, 8 REFUSED", lines(checked, "?size=2&cursor=" + first));
        for (var wrong : new String[]{"?cursor=nonsense", "?size=0", "?size=100000", "?outcome=LOST"}) {
            api.as(Role.CLERK).get("/api/imports/" + checked.id() + "/lines" + wrong).expectProblem(400,
                    "INVALID_INPUT");
        }
    }
}
