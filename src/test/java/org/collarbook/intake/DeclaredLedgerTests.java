package org.collarbook.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A ledger over containers of which something was declared for a group: each fact stays with whoever answers for it. */
@RegisterTest
class DeclaredLedgerTests {

    private final Api api;
    private final JdbcClient jdbc;
    private final String maker = "L" + Given.serial();
    private final String serial = Given.serial();

    DeclaredLedgerTests(Api api, JdbcClient jdbc) {
        this.api = api;
        this.jdbc = jdbc;
    }

    private Answer container() {
        var found = api.as(Role.CLERK).get("/api/containers?serial=" + serial).expect(200);
        return api.as(Role.CLERK).get("/api/containers/" + found.text("/items/0/id")).expect(200);
    }

    private String post(String path, Object body) {
        return api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString()).post(path, body)
                .text("/declaration/id");
    }

    private String declared() {
        var body = new LinkedHashMap<String, Object>();
        body.put("declaredBy", "the plant manager");
        body.put("declaredOn", "2026-11-20");
        body.put("statement", "Seen in the yard.");
        body.put("facts", Map.of("coated", true, "jurisdiction", "US"));
        body.put("group", Map.of("maker", maker));
        return post("/api/declarations", body);
    }

    private void load(String tare, @Nullable Map<String, Object> said) {
        new Ledger().row("maker", maker, "serial", serial, "tare", tare).load(api, said);
    }

    private List<String> told() {
        return api.as(Role.CLERK).get("/api/containers/" + container().id() + "/assessment").expect(200).at("/declared")
                .valueStream().map(one -> one.at("/by").asString() + one.at("/facts").toString().replace("\"", ""))
                .toList();
    }

    @Test
    void aLedgerWithoutADeclarationLeavesWhatWasDeclared() {
        load("17.0 lb", null);
        var declaration = declared();
        load("17.5 lb", null);
        assertThat(container().text("/tare")).contains("17.5");
        assertThat(told()).containsExactly("the plant manager[coated,jurisdiction]");
        post("/api/declarations/" + declaration + "/withdrawal", Map.of("reason", "another yard"));
        assertThat(container().at("/declared")).isEmpty();
        assertThat(container().at("/coated").isBoolean()).isFalse();
        assertThat(told()).isEmpty();
    }

    @Test
    void aLedgerWithADeclarationAddsItsOwn() {
        load("17.0 lb", null);
        var declaration = declared();
        load("17.0 lb", Ledger.declaration());
        assertThat(told()).containsExactly(
                "the yard foreman of the tests[lading,exclusive,corrosion_free,marks_legible]",
                "the plant manager[coated,jurisdiction]");
        post("/api/declarations/" + declaration + "/withdrawal", Map.of("reason", "another yard"));
        assertThat(told()).containsExactly(
                "the yard foreman of the tests[lading,exclusive,corrosion_free,marks_legible]");
        assertThat(container().at("/coated").isBoolean()).isFalse();
        assertThat(api.as(Role.CLERK).get("/api/audit/verification?container=" + container().id()).expect(200)
                .at("/whole").asBoolean()).isTrue();
    }

    /** Of a cylinder of May 2004; what blank cells and last tests mean is of the declaration too. */
    @ParameterizedTest
    @CsvSource({"2004-04-30, false", "2004-05-01, true"})
    void aLedgersDeclarationSaysNothingOfWhatWasMadeAfterItsDay(String declaredOn, boolean counts) {
        var said = Ledger.declaration();
        said.put("declaredOn", declaredOn);
        said.put("bareMonthMethod", "EXTERNAL_VISUAL");
        said.put("blankMeansNone", true);
        var another = Given.serial();
        var ledger = new Ledger().row("maker", maker, "serial", serial)
                .row("maker", maker, "serial", another, "last_test_month", "2022-05")
                .row("maker", maker, "serial", Given.serial(), "manufactured", "");
        var checked = Ledger.checked(api, ledger.csv(), said);
        assertThat(checked.at("/problems").findValuesAsString("code").stream()
                .filter("DECLARED_BEFORE_MANUFACTURE"::equals)).hasSize(counts ? 0 : 2);
        assertThat(Ledger.rows(Ledger.committed(api, checked, "ABORT"))).isEqualTo("3/3/0/0/0/0");
        assertThat(container().at("/coated").isBoolean()).isEqualTo(counts);
        assertThat(container().at("/collarRead").asBoolean()).isEqualTo(counts);
        assertThat(told().isEmpty()).isEqualTo(!counts);
        var of = Map.of(another, counts, serial, counts);
        for (var one : of.entrySet()) {
            assertThat(jdbc.sql("select declaration_id is not null from container where serial = ?")
                    .param(one.getKey()).query(Boolean.class).single()).isEqualTo(one.getValue());
        }
        assertThat(jdbc.sql("select r.method from requalification r join container c on c.id = r.container_id"
                + " where c.serial = ?").param(another).query(String.class).list())
                .containsExactly(counts ? "EXTERNAL_VISUAL" : null);
        assertThat(jdbc.sql("select coated from container where maker = ? and manufactured is null").param(maker)
                .query(Boolean.class).single()).isTrue();
        var again = Ledger.checked(api, ledger.csv(), said);
        assertThat(Ledger.rows(again)).isEqualTo("3/0/0/3/0/0");
    }

    /** The words of another day would fill, but the container is of May 2004. */
    @Test
    void norDoesOneThatIsToldLaterOfAKnownContainer() {
        load("17.0 lb", null);
        var said = Ledger.declaration();
        said.put("declaredOn", "2004-04-30");
        load("17.5 lb", said);
        assertThat(told()).isEmpty();
        assertThat(container().at("/coated").isBoolean()).isFalse();
        load("17.5 lb", Ledger.declaration());
        assertThat(container().at("/coated").asBoolean()).isTrue();
    }
}
