package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;

import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

@RegisterTest
class DeparturesTests {

    private final Departures departures;
    private final JdbcClient jdbc;

    DeparturesTests(Departures departures, JdbcClient jdbc) {
        this.departures = departures;
        this.jdbc = jdbc;
    }

    private void gone(UUID customer, String ago) {
        jdbc.sql("insert into departure (customer_id, container_id, site_id, gone_by, gone_at)"
                + " values (?, ?, ?, '7', now() - cast(? as interval))")
                .params(customer, UUID.randomUUID(), UUID.randomUUID(), ago).update();
    }

    @Test
    void areKeptForLongerThanATokenIsGood() {
        var customer = UUID.randomUUID();
        gone(customer, "44 days");
        gone(customer, "46 days");
        departures.forget();
        assertThat(jdbc.sql("select extract(day from now() - gone_at)::int from departure where customer_id = ?")
                .param(customer).query(Integer.class).list()).containsExactly(44);
    }
}
