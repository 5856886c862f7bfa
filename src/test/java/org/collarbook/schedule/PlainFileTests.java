package org.collarbook.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import javax.sql.DataSource;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.postgresql.PGConnection;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;

@RegisterTest
class PlainFileTests {

    private final Api api;
    private final Given given;
    private final DataSource source;

    PlainFileTests(Api api, Given given, DataSource source) {
        this.api = api;
        this.given = given;
        this.source = source;
    }

    private String tagged(UUID site, String begins) {
        var body = Given.cylinder();
        body.put("tag", begins + Given.serial());
        given.moved(given.registered(body), site, "2026-11-20T09:00:00Z");
        return String.valueOf(body.get("tag"));
    }

    /** By another program's reader: PostgreSQL's COPY FROM takes the texts as they are recorded, quotes and all. */
    @Test
    void isReadBackAsItIsRecorded() throws SQLException, IOException {
        var site = given.site(given.customer());
        var tags = List.of(tagged(site, "=1+1,\"x\" "), tagged(site, "-2"), tagged(site, "é;'"));
        var plain = api.as(Role.CLERK).get("/api/schedule?format=csv&plain=true&site=" + site).expect(200);
        assertThat(plain.contentType()).startsWith("text/csv");
        assertThat(read(plain.bytes())).containsExactlyInAnyOrderElementsOf(tags);
        var guarded = api.as(Role.CLERK).get("/api/schedule?format=csv&plain=false&site=" + site).expect(200);
        assertThat(read(guarded.bytes())).containsExactlyInAnyOrder("'" + tags.get(0), "'" + tags.get(1), tags.get(2));
    }

    private List<@Nullable String> read(byte[] csv) throws SQLException, IOException {
        try (var connection = source.getConnection()) {
            var jdbc = JdbcClient.create(new SingleConnectionDataSource(connection, true));
            jdbc.sql("create temp table plain_file (due text, last_day date, status text, requirement text, rule text,"
                    + " kind text, specification text, maker text, serial text, manufactured text, size text, tag text,"
                    + " site text, site_name text, customer text, owner text, routes text, container_id uuid,"
                    + " jurisdiction text)").update();
            try {
                connection.unwrap(PGConnection.class).getCopyAPI().copyIn(
                        "copy plain_file from stdin with (format csv, header match)", new ByteArrayInputStream(csv));
                return jdbc.sql("select tag from plain_file").query(String.class).list();
            } finally {
                jdbc.sql("drop table plain_file").update();
            }
        }
    }

    @Test
    void plainIsYesOrNo() {
        assertThat(api.as(Role.CLERK).get("/api/schedule?format=csv&plain=maybe").expectProblem(400, "INVALID_INPUT")
                .errors()).containsExactly(Map.entry("plain", "UNKNOWN_WORD"));
    }
}
