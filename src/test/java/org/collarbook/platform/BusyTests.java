package org.collarbook.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.util.ArrayList;
import java.util.Map;
import java.util.UUID;

import javax.sql.DataSource;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.test.context.TestPropertySource;

import com.zaxxer.hikari.HikariDataSource;

/** With every connection in use, a request is told to come again; it is no fault of the service. */
@RegisterTest
@TestPropertySource(properties = {"spring.datasource.hikari.connection-timeout=5000",
        "spring.datasource.hikari.maximum-pool-size=2"})
class BusyTests {

    private final Api api;
    private final DataSource source;

    BusyTests(Api api, DataSource source) {
        this.api = api;
        this.source = source;
    }

    @Test
    void comesAgain() throws Exception {
        var clerk = api.as(Role.CLERK);
        var taken = new ArrayList<Connection>();
        try {
            for (int i = 0; i < source.unwrap(HikariDataSource.class).getMaximumPoolSize(); i++) {
                taken.add(source.getConnection());
            }
            for (var answer : new Answer[]{clerk.get("/api/containers/" + UUID.randomUUID()),
                    clerk.post("/api/customers", Map.of("code", Given.serial(), "name", "Nobody"))}) {
                answer.expectProblem(503, "BUSY");
                assertThat(answer.header("Retry-After")).isEqualTo("1");
            }
        } finally {
            for (var connection : taken) {
                connection.close();
            }
        }
        clerk.get("/api/containers/" + UUID.randomUUID()).expectProblem(404, "NOT_FOUND");
    }
}
