package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.io.StringReader;
import java.time.Instant;
import java.util.ArrayList;
import java.util.UUID;

import org.apache.commons.csv.CSVFormat;
import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.simple.JdbcClient;

@RegisterTest
class ScheduleTests {

    private final Api api;
    private final Given given;
    private final ScheduleRows rows;
    private final JdbcClient jdbc;

    ScheduleTests(Api api, Given given, ScheduleRows rows, JdbcClient jdbc) {
        this.api = api;
        this.given = given;
        this.rows = rows;
        this.jdbc = jdbc;
    }

    private UUID siteWith(String... manufactured) {
        var site = given.site(given.customer());
        for (var month : manufactured) {
            var body = Given.cylinder();
            body.put("manufactured", month);
            given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        }
        return site;
    }

    @Test
    void pagesByMonthWithinTheMonthsAskedFor() {
        var site = siteWith("2015-03", "2015-01", "2014-12", "2015-02", "2016-01");
        var months = new ArrayList<String>();
        var next = "";
        do {
            var page = api.as(Role.CLERK)
                    .get("/api/schedule?from=2026-12&to=2027-03&size=2&site=" + site + "&cursor=" + next).expect(200);
            page.at("/items").forEach(line -> months.add(line.at("/due").asString()));
            next = page.json().path("next").asString("");
        } while (!next.isEmpty());
        assertThat(months).containsExactly("2026-12", "2027-01", "2027-02", "2027-03");
    }

    /** As of a container whose two clocks of one requirement, one a jurisdiction, fall due in the same month. */
    @Test
    void aPageMayEndBetweenTwoJurisdictions() {
        var site = siteWith("2015-03", "2015-03");
        assertThat(jdbc.sql("""
                insert into requirement (container_id, requirement, jurisdiction, decisive, standing, due,
                    filled_in_time, rule, reasons, site_id, customer_id, rule_book_id, assessed_on)
                select container_id, requirement, place, false, standing, due, filled_in_time, null, reasons, site_id,
                    customer_id, rule_book_id, assessed_on
                from requirement, (values ('CA'), ('')) also (place) where site_id = ?""").param(site).update())
                .isEqualTo(4);
        var pages = new ArrayList<String>();
        var next = "";
        do {
            var page = api.as(Role.CLERK).get("/api/schedule?size=1&site=" + site + "&cursor=" + next).expect(200);
            page.at("/items").forEach(line -> pages.add(line.at("/containerId").asString() + " "
                    + line.path("jurisdiction").asString("not known")));
            next = page.json().path("next").asString("");
        } while (!next.isEmpty());
        assertThat(pages).hasSize(6).doesNotHaveDuplicates();
        assertThat(pages.subList(0, 3)).extracting(line -> line.substring(37)).containsExactly("not known", "CA", "US");
        var file = api.as(Role.CLERK).get("/api/schedule?format=csv&site=" + site).expect(200);
        assertThat(file.body().lines().map(line -> line.substring(line.lastIndexOf(',') + 1))).containsExactly(
                "jurisdiction", "", "CA", "US",
                "", "CA", "US");
    }

    @Test
    void filtersByStatus() {
        var site = siteWith("2010-01", "2014-11", "2020-01");
        for (var status : new String[]{"OVERDUE", "DUE_THIS_MONTH", "IN_DATE"}) {
            var page = api.as(Role.CLERK).get("/api/schedule?site=" + site + "&status=" + status).expect(200);
            assertThat(page.at("/items")).as(status).hasSize(1);
            assertThat(page.text("/items/0/status")).isEqualTo(status);
        }
    }

    /** Read back by a CSV reader that did not write it (the writer is PostgreSQL's COPY). */
    @ParameterizedTest
    @ValueSource(strings = {"&format=csv", ""})
    void theFileHasTheSameLinesAsThePages(String format) throws Exception {
        var site = siteWith("2015-03", "2015-01", "2014-12");
        var answer = api.as(Role.CLERK).with("Accept", format.isEmpty() ? "text/csv" : "*/*")
                .get("/api/schedule?site=" + site + format).expect(200);
        assertThat(answer.contentType()).startsWith("text/csv");
        var rows = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get()
                .parse(new StringReader(answer.body())).getRecords();
        assertThat(rows).extracting(row -> row.get("due")).containsExactly("2026-12", "2027-01", "2027-03");
        assertThat(rows).extracting(row -> row.get("last_day")).containsExactly("2026-12-31", "2027-01-31",
                "2027-03-31");
        assertThat(rows).extracting(row -> row.get("rule")).doesNotContain("");
        var pages = api.as(Role.CLERK).get("/api/schedule?site=" + site).expect(200);
        assertThat(rows).extracting(row -> row.get("container_id")).containsExactlyElementsOf(
                pages.at("/items").valueStream().map(line -> line.at("/containerId").asString()).toList());
    }

    /** OWASP, CSV injection: a cell that begins with = + - @ is run by spreadsheets. */
    @Test
    void cellsThatASpreadsheetWouldRunAreGuarded() {
        var site = given.site(given.customer());
        var body = Given.cylinder();
        body.put("tag", "=1+1-" + Given.serial());
        given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        var file = api.as(Role.CLERK).get("/api/schedule?format=csv&site=" + site).expect(200);
        assertThat(file.body()).contains(",'" + body.get("tag") + ",");
    }

    /** More often than there are connections: each must come back sound, or not at all. */
    @Test
    void readersThatGoAwayHarmNobody() {
        siteWith("2015-03", "2015-01");
        for (int i = 0; i < 30; i++) {
            assertThatThrownBy(() -> rows.write(Source.stored(Instant.now()), ScheduleFilter.EVERYTHING, false,
                    new OutputStream() {
                        @Override
                        public void write(int octet) throws IOException {
                            throw new IOException("gone away");
                        }
                    })).isInstanceOf(IOException.class);
            api.as(Role.CLERK).get("/api/schedule?size=1").expect(200);
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"from=2026-13", "to=soon", "size=0", "size=100000", "status=FINE", "kind=BOTTLE",
            "site=not-an-id", "cursor=x", "requirement=NONE", "cursor=YR9iH2M"})
    void badQuestionsAreRefused(String query) {
        api.as(Role.CLERK).get("/api/schedule?" + query).expectProblem(400, "INVALID_INPUT");
    }

    @Test
    void aFormatNobodyServesIsRefused() {
        assertThat(api.as(Role.CLERK).get("/api/schedule/summary?format=pdf").status()).isEqualTo(406);
        assertThat(api.as(Role.CLERK).with("Accept", "image/png").get("/api/schedule").status()).isEqualTo(406);
    }
}
