package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.collarbook.access.Role;
import org.collarbook.platform.Caution;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Read off the page by PDFBox, which did not write it. */
@RegisterTest
class SchedulePdfTests {

    private final Api api;
    private final Given given;
    private final JdbcClient jdbc;

    SchedulePdfTests(Api api, Given given, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.jdbc = jdbc;
    }

    private UUID site(UUID customer, String name) {
        var body = Given.depot();
        body.put("name", name);
        body.put("kind", "CUSTOMER");
        body.put("customerId", customer);
        return UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
    }

    /** Coated and of March 2015, so due in March 2027: 49 CFR 180.209(e), twelve years. */
    private String cylinderAt(UUID site) {
        var body = Given.cylinder();
        body.put("manufactured", "2015-03");
        given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        return String.valueOf(body.get("serial"));
    }

    private List<String> pages(String query) throws IOException {
        var answer = api.as(Role.CLERK).get("/api/schedule?format=pdf&" + query).expect(200);
        assertThat(answer.contentType()).isEqualTo("application/pdf");
        assertThat(answer.header("Content-Disposition")).contains("schedule-2027-03.pdf");
        var pages = new ArrayList<String>();
        try (var document = Loader.loadPDF(answer.bytes())) {
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                var stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(document));
            }
        }
        return pages;
    }

    @Test
    void listsEachLineUnderItsSiteAndEachRuleOnce() throws IOException {
        var customer = given.customer();
        var serials = new ArrayList<String>();
        for (var name : new String[]{"Grange Road", "A name that is longer than any line has room for, "
                + "of the Łódź and Besançon Cooperative Society for Warm Greenhouses at the Old Airfield, north gate"}) {
            var site = site(customer, name);
            for (int i = 0; i < 25; i++) {
                serials.add(cylinderAt(site));
            }
        }
        var pages = pages("month=2027-03&customer=" + customer);
        var text = String.join("\n", pages);
        assertThat(pages.size()).isGreaterThan(2);
        for (int i = 0; i < pages.size(); i++) {
            assertThat(pages.get(i)).contains("Page " + (i + 1) + " of " + pages.size()).contains("sees no dent");
        }
        assertThat(text).contains("Due in March 2027", "50 requirements of 50 containers", "50 in date", "50 × 20 lb",
                "customer C",
                "Snapshot taken", "2026-11-25 12:00:00 UTC", "Grange Road: 25", "Łódź");
        serials.forEach(serial -> assertThat(text.split(serial + "\\b", -1)).as(serial).hasSize(2));
        assertThat(text.split("us\\.180\\.209\\.", -1)).as("the rule, once").hasSize(2);
        assertThat(text).contains("49 CFR 180.209(");
        assertThat(text.replaceAll("\\s+", "")).contains(Caution.TEXT.replaceAll("\\s+", ""));
    }

    @Test
    void nothingIsSaidAndTheMonthMayBeToldByItsEnds() throws IOException {
        var site = given.site(null);
        assertThat(String.join("\n", pages("from=2027-03&to=2027-03&asOf=2027-04-02&site=" + site)))
                .contains("nothing falls due", "0 requirements", "Status as of 2027-04-02");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"'' | month | MISSING", "from=2027-03&to=2027-04 | month | MISSING",
            "month=2027-03&from=2027-03 | month | TOLD_TWICE", "month=2027-03&cursor=x | cursor | UNKNOWN_PARAMETER"})
    void refuses(String query, String pointer, String code) {
        assertThat(api.as(Role.CLERK).get("/api/schedule?format=pdf&" + query).expectProblem(400, "INVALID_INPUT")
                .errors()).containsExactly(Map.entry(pointer, code));
    }

    /** As of a container with a clock in each of so many jurisdictions: none has as many, but a line is a line. */
    @Test
    void aListThatIsTooLongIsRefusedWhole() throws IOException {
        var site = given.site(given.customer());
        cylinderAt(site);
        for (int lines : new int[]{MonthOnPaper.MOST - 1, 1}) {
            jdbc.sql("""
                    insert into requirement (container_id, requirement, jurisdiction, decisive, standing, due,
                        filled_in_time, rule, reasons, site_id, customer_id, rule_book_id, assessed_on)
                    select container_id, requirement, 'X' || :lines || '-' || n, false, standing, due, filled_in_time,
                        rule, reasons, site_id, customer_id, rule_book_id, assessed_on
                    from requirement, generate_series(1, :lines) n where site_id = :site and decisive""")
                    .param("lines", lines).param("site", site).update();
            if (lines > 1) {
                assertThat(String.join("", pages("month=2027-03&site=" + site))).contains("3000 requirements");
            }
        }
        api.as(Role.CLERK).get("/api/schedule?format=pdf&month=2027-03&site=" + site)
                .expectProblem(422, "LIST_TOO_LONG");
    }
}
