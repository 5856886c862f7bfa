package org.collarbook.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A ledger that still has the marks that were misread brings nothing back to a record that is closed. */
@RegisterTest
class MergedLedgerTests {

    private final Api api;
    private final JdbcClient jdbc;

    MergedLedgerTests(Api api, JdbcClient jdbc) {
        this.api = api;
        this.jdbc = jdbc;
    }

    @Test
    void theRowIsRefusedAndSaysWhy() {
        var maker = "M" + Given.serial();
        var ledger = new Ledger();
        for (var serial : List.of("B100", "8100")) {
            ledger.row("maker", maker, "serial", serial, "site", "S" + maker, "site_kind", "DEPOT");
        }
        Ledger.committed(api, Ledger.checked(api, ledger.csv(), Ledger.declaration()), "ABORT");
        var clerk = api.as(Role.CLERK);
        var kept = "/api/containers/" + id(maker, "B100");
        clerk.ifMatch(clerk.get(kept)).post(kept + "/merges", Map.of("absorbed", id(maker, "8100"), "setAside",
                List.of("serial"), "reason", "the B was read as 8")).expect(201);

        var again = Ledger.checked(api, ledger.csv(), Ledger.declaration());
        var lines = clerk.get("/api/imports/" + again.id() + "/lines").expect(200).body();
        assertThat(lines).contains("MERGED");
        Ledger.committed(api, again, "SKIP");
        assertThat(jdbc.sql("select count(*) from requirement r join container c on c.id = r.container_id"
                + " where c.maker = ? and c.serial = '8100'").param(maker).query(Long.class).single()).isZero();
    }

    private String id(String maker, String serial) {
        return jdbc.sql("select id::text from container where maker = ? and serial = ?").params(maker, serial)
                .query(String.class).single();
    }
}
