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

/** A ledger over containers of which something was declared for a group: each fact stays with whoever answers for it. */
@RegisterTest
class DeclaredLedgerTests {

    private final Api api;
    private final String maker = "L" + Given.serial();
    private final String serial = Given.serial();

    DeclaredLedgerTests(Api api) {
        this.api = api;
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
}
