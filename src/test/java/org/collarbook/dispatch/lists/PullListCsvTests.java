package org.collarbook.dispatch.lists;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import javax.sql.DataSource;

import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.postgresql.PGConnection;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

/** Read back by readers that are not ours: commons-csv (RFC 4180) and PostgreSQL's COPY. */
@RegisterTest
class PullListCsvTests {

    private final Api api;
    private final Given given;
    private final GivenRoutes routes;
    private final DataSource dataSource;

    PullListCsvTests(Api api, Given given, JdbcClient jdbc, DataSource dataSource) {
        this.api = api;
        this.given = given;
        this.routes = new GivenRoutes(api, given, jdbc);
        this.dataSource = dataSource;
    }

    private UUID siteNamed(String name, String address) {
        var body = Given.depot();
        body.putAll(Map.of("name", name, "address", address, "kind", "CUSTOMER", "customerId", given.customer()));
        return UUID.fromString(api.as(Role.CLERK).post("/api/sites", body).expect(201).id());
    }

    private void at(UUID site, String serial, boolean collarRead) {
        var body = Given.cylinder();
        body.put("manufactured", "2010-05");
        body.put("serial", serial);
        body.put("collarRead", collarRead);
        given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
    }

    private String routeWithThree() {
        var first = siteNamed("=HYPERLINK(\"x\")", "1 Mill Lane, \"the barn\"");
        var second = siteNamed("Nörr; Sons", "@home");
        at(first, Given.serial(), true);
        at(second, Given.serial(), true);
        at(second, Given.serial(), false);
        return routes.on(given.site(null), List.of(LocalDate.of(2026, 12, 3), LocalDate.of(2026, 12, 10)), first,
                second);
    }

    private Answer csv(String route) {
        return api.as(Role.DISPATCHER).with("Accept", "text/csv").get("/api/routes/" + route + "/pull-list")
                .expect(200);
    }

    private static List<CSVRecord> records(String csv) throws IOException {
        return CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get().parse(new StringReader(csv))
                .getRecords();
    }

    @Test
    void hasARowForEachContainer() throws IOException {
        var route = routeWithThree();
        var answer = csv(route);
        assertThat(answer.contentType()).startsWith("text/csv").contains("UTF-8");
        var list = api.as(Role.DISPATCHER).get("/api/routes/" + route + "/pull-list").expect(200);
        var rows = records(answer.body());
        assertThat(rows).hasSize(3);
        var row = rows.getFirst();
        assertThat(row.get("route")).isEqualTo(route);
        assertThat(row.get("position")).isEqualTo("1");
        assertThat(row.get("visit")).isEqualTo("2026-12-03");
        assertThat(row.get("next_visit")).isEqualTo("2026-12-10");
        assertThat(row.get("address")).isEqualTo("1 Mill Lane, \"the barn\"");
        for (var column : Map.of("container_id", "id", "serial", "serial", "status", "status", "due", "due", "last_day",
                "lastDay", "action", "action", "reason", "reason/code", "size", "size").entrySet()) {
            assertThat(row.get(column.getKey())).as(column.getKey())
                    .isEqualTo(list.text("/stops/0/containers/0/" + column.getValue()));
        }
        assertThat(row.get("citation")).isEqualTo("49 CFR 180.209(e)");
        assertThat(row.get("check")).contains("do not top it off");
        assertThat(rows.get(2).get("action")).isEqualTo("LOOK_INTO");
        assertThat(rows.get(2).get("reason_text")).contains("The requalification history is not known.");
    }

    @Test
    void isTheSameByFormatAndNothingInItRunsInASpreadsheet() throws IOException {
        var route = routeWithThree();
        var byFormat = api.as(Role.DISPATCHER).get("/api/routes/" + route + "/pull-list?format=csv").expect(200);
        assertThat(byFormat.body()).isEqualTo(csv(route).body());
        var rows = records(byFormat.body());
        assertThat(rows.getFirst().get("site_name")).isEqualTo("'=HYPERLINK(\"x\")");
        assertThat(rows.get(1).get("address")).isEqualTo("'@home");
        assertThat(rows.get(1).get("site_name")).isEqualTo("Nörr; Sons");
        assertThat(rows)
                .allSatisfy(row -> assertThat(row.toList()).noneMatch(cell -> cell.matches("(?s)[=+\\-@\t\r].*")));
    }

    @Test
    void isTheSameForTheOtherLists() throws IOException {
        var customer = given.customer();
        var site = given.site(customer);
        at(site, Given.serial(), true);
        var rows = records(api.as(Role.DISPATCHER).get("/api/pull-list?format=csv&customer=" + customer).expect(200)
                .body());
        assertThat(rows).hasSize(1);
        assertThat(rows.getFirst().get("route")).isEmpty();
        assertThat(rows.getFirst().get("status")).isEqualTo("OVERDUE");
    }

    @Test
    void theDatabaseReadsItBack() throws Exception {
        var csv = csv(routeWithThree()).body();
        var columns = csv.lines().findFirst().orElseThrow().split(",");
        try (var connection = dataSource.getConnection()) {
            var jdbc = JdbcClient.create(new SingleConnectionDataSource(connection, true));
            jdbc.sql("create temporary table read_back (" + String.join(" text, ", columns).replace("check text",
                    "\"check\" text") + " text)").update();
            try {
                connection.unwrap(PGConnection.class).getCopyAPI().copyIn(
                        "copy read_back from stdin with (format csv, header match)", new ByteArrayInputStream(
                                csv.getBytes(StandardCharsets.UTF_8)));
                assertThat(jdbc.sql("select count(*) from read_back where visit::date = '2026-12-03'"
                        + " and container_id::uuid is not null and (last_day is null or last_day::date = '2022-05-31')")
                        .query(Long.class).single()).isEqualTo(3);
            } finally {
                jdbc.sql("drop table read_back").update();
            }
        }
    }
}
