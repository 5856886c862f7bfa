package org.collarbook.bench;

import static org.assertj.core.api.Assertions.assertThat;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;

/**
 * Twenty years of a fleet over HTTP, by one method and by all four.
 * {@code mvn -Pbench test -Dtest=ForecastBenchmark -Dcollarbook.bench.forecast=1000000}
 */
@Tag("bench")
@RegisterTest
@TestPropertySource(properties = "collarbook.forecast.most=10000000")
class ForecastBenchmark {

    private static final int CONTAINERS = Integer.getInteger("collarbook.bench.forecast", 100_000);

    private final Api api;
    private final JdbcClient jdbc;
    private final Flyway flyway;

    ForecastBenchmark(Api api, JdbcClient jdbc, Flyway flyway) {
        this.api = api;
        this.jdbc = jdbc;
        this.flyway = flyway;
    }

    @Test
    void twentyYears() throws Exception {
        new Fleet(jdbc, CONTAINERS).write();
        try (var owner = flyway.getConfiguration().getDataSource().getConnection();
                var statement = owner.createStatement()) {
            statement.execute("vacuum analyze");
        }
        ask("first", "\"AS_LAST\"");
        ask("one method", "\"AS_LAST\"");
        ask("four methods", "\"AS_LAST\", \"EXTERNAL_VISUAL\", \"VOLUMETRIC_EXPANSION\", \"PROOF_PRESSURE\"");
    }

    private void ask(String name, String methods) {
        long started = System.nanoTime();
        var answer = api.as(Role.CLERK)
                .post("/api/forecasts", "{\"filter\": {\"kind\": \"CYLINDER\"}, \"methods\": [" + methods + "]}")
                .expect(200);
        long took = System.nanoTime() - started;
        assertThat(answer.at("/containers").asInt()).isGreaterThanOrEqualTo(CONTAINERS);
        Figures.print("forecast of 20 years, %s: %,d containers, %,d due in the first curve, %.1f s, %,.0f containers a"
                + " second", name, CONTAINERS, answer.at("/curves/0/due").asInt(), took / 1e9,
                Figures.perSecond(CONTAINERS, took));
    }
}
