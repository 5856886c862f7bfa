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

/** What a running recall names is held as a ledger brings it in, the same as by a registration. */
@RegisterTest
class RecalledLedgerTests {

    private final Api api;
    private final JdbcClient jdbc;

    RecalledLedgerTests(Api api, JdbcClient jdbc) {
        this.api = api;
        this.jdbc = jdbc;
    }

    private List<String> standing(String maker) {
        return jdbc.sql("""
                select c.serial || ' ' || r.standing from container c join requirement r on r.container_id = c.id
                where c.maker = ? and r.decisive order by c.serial""").param(maker).query(String.class).list();
    }

    @Test
    void rowsThatMatchAreHeldWithTheCommitAndTheOthersAreNot() {
        var maker = "L" + Given.serial();
        api.as(Role.CLERK).post("/api/recalls", Map.of("maker", maker, "issuedBy", "the maker", "serialFirst", "B200",
                "serialLast", "B299")).expect(201);
        var ledger = new Ledger();
        for (var serial : List.of("B199", "B200", "B299", "B300")) {
            ledger.row("maker", maker, "serial", serial, "last_test_mark", "5/B045/22E", "site", "S" + maker,
                    "site_kind", "DEPOT");
        }
        var checked = Ledger.checked(api, ledger.csv(), Ledger.declaration());
        Ledger.committed(api, checked, "ABORT");
        assertThat(standing(maker)).containsExactly("B199 DUE", "B200 ON_HOLD", "B299 ON_HOLD", "B300 DUE");

        var again = Ledger.checked(api, ledger.row("maker", maker, "serial", "B250", "site", "S" + maker).csv(),
                Ledger.declaration());
        Ledger.committed(api, again, "ABORT");
        assertThat(standing(maker)).contains("B200 ON_HOLD", "B250 ON_HOLD", "B300 DUE");
        assertThat(jdbc.sql("select count(*) from hold h join container c on c.id = h.container_id where c.maker = ?")
                .param(maker).query(Long.class).single()).isEqualTo(3);
    }
}
