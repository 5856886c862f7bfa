package org.collarbook.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What a ledger brings is in the chains, and judges the fills of the containers that it knows better. */
@RegisterTest
class LedgerJournalTests {

    private final Api api;
    private final JdbcClient jdbc;
    private final String maker = "J" + Given.serial();

    LedgerJournalTests(Api api, JdbcClient jdbc) {
        this.api = api;
        this.jdbc = jdbc;
    }

    private void committed(String... cells) {
        var checked = Ledger.checked(api, new Ledger().row(cells).csv(), Ledger.declaration());
        Ledger.committed(api, checked, "ABORT");
    }

    private UUID container(String serial) {
        return jdbc.sql("select id from container where maker = ? and serial = ?").params(maker, serial)
                .query(UUID.class).single();
    }

    private List<String> kinds(UUID container) {
        var answer = api.as(Role.CLERK).get("/api/audit/verification?container=" + container).expect(200);
        assertThat(answer.at("/whole").asBoolean()).as(answer.body()).isTrue();
        return jdbc.sql("select kind from journal where container_id = ? order by seq").param(container)
                .query(String.class).list();
    }

    /** 49 CFR 173.304a(d)(1): 42 % of 40 lb of water are 16.8 lb. */
    @Test
    void aRowThatCorrectsAContainerFlagsItsFill() {
        committed("maker", maker, "serial", "A1", "last_test_mark", "5/B045/22E", "site", "S" + maker, "site_kind",
                "DEPOT");
        var id = container("A1");
        assertThat(kinds(id)).contains("REGISTERED", "MOVED", "REQUALIFIED");
        api.as(Role.FILLER).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/fills",
                Map.of("containerId", id, "filledAt", "2026-11-25T11:00:00Z", "specificGravity", 0.508, "netAfterLb",
                        new BigDecimal("19.5"), "lookedAt", true))
                .expect(201);
        committed("maker", maker, "serial", "A1", "water_capacity", "40.0 lb", "site", "S" + maker);
        var fills = api.as(Role.CLERK).get("/api/containers/" + id + "/fills").expect(200);
        assertThat(fills.at("/items")).hasSize(1);
        assertThat(fills.text("/items/0/flags/0/reasons/0/code")).isEqualTo("OVER_LIMIT");
        assertThat(kinds(id)).contains("CORRECTED", "RECORDED_ANEW", "FILL_FLAGGED");
    }

    @Test
    void whatARecallHoldsOfItIsEntered() {
        api.as(Role.CLERK).post("/api/recalls", Map.of("maker", maker, "issuedBy", "the maker")).expect(201);
        committed("maker", maker, "serial", "B2", "last_test_mark", "5/B045/22E", "site", "S" + maker, "site_kind",
                "DEPOT");
        assertThat(kinds(container("B2"))).contains("HELD");
    }
}
