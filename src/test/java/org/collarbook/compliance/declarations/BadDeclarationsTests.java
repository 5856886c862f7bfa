package org.collarbook.compliance.declarations;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** What cannot be declared is refused by name, alike when it is only looked at, and leaves no trace. */
@RegisterTest
class BadDeclarationsTests {

    private static final String NOBODY = "00000000-0000-7000-8000-000000000000";

    private final Api api;
    private final Tables tables;
    private final JsonMapper json;

    BadDeclarationsTests(Api api, Tables tables, JsonMapper json) {
        this.json = json;
        this.api = api;
        this.tables = tables;
    }

    private String body(String group, String facts, String other) {
        var body = (ObjectNode) json.readTree("""
                {"declaredBy":"the plant manager","declaredOn":"2026-11-20","statement":"seen",
                 "group":{%s},"facts":{%s}}""".formatted(group, facts));
        return body.setAll((ObjectNode) json.readTree("{" + other + "}")).toString();
    }

    @ParameterizedTest
    @CsvSource(delimiter = ';', quoteCharacter = '`', value = {
            "'';`\"coated\":true`;'';/group;MISSING",
            "`\"everything\":false`;`\"coated\":true`;'';/group;MISSING",
            "`\"everything\":true,\"kind\":\"CYLINDER\"`;`\"coated\":true`;'';/group/everything;OUT_OF_RANGE",
            "`\"kind\":\"CYLINDER\"`;'';'';/facts;MISSING",
            "`\"kind\":\"BARREL\"`;`\"coated\":true`;'';/group/kind;UNKNOWN_WORD",
            "`\"containers\":[]`;`\"coated\":true`;'';/group/containers;OUT_OF_RANGE",
            "`\"containers\":[null]`;`\"coated\":true`;'';/group/containers/0;MISSING",
            "`\"containers\":[\"" + NOBODY + "\"]`;`\"coated\":true`;'';/group/containers/0;UNKNOWN_CONTAINER",
            "`\"site\":\"" + NOBODY + "\"`;`\"coated\":true`;'';/group/site;UNKNOWN_SITE",
            "`\"customer\":\"" + NOBODY + "\"`;`\"coated\":true`;'';/group/customer;UNKNOWN_CUSTOMER",
            "`\"size\":\"a big one\"`;`\"coated\":true`;'';/group/size;INVALID_SIZE",
            "`\"maker\":\"a maker whose symbol is too long\"`;`\"coated\":true`;'';/group/maker;INVALID_MAKER",
            "`\"specification\":\"??\"`;`\"coated\":true`;'';/group/specification;UNKNOWN_SPECIFICATION",
            "`\"manufacturedFrom\":\"May\"`;`\"coated\":true`;'';/group/manufacturedFrom;INVALID_MONTH",
            "`\"manufacturedFrom\":\"2016-05\",\"manufacturedTo\":\"2016-04\"`;`\"coated\":true`;'';/group/manufacturedTo;OUT_OF_RANGE",
            "`\"kind\":\"CYLINDER\"`;`\"lading\":\"\"`;'';/facts/lading;INVALID_LADING",
            "`\"kind\":\"CYLINDER\"`;`\"jurisdiction\":\"here\"`;'';/facts/jurisdiction;INVALID_JURISDICTION",
            "`\"kind\":\"CYLINDER\"`;`\"coated\":true`;`\"onlyUnknown\":false`;/onlyUnknown;OUT_OF_RANGE",
            "`\"kind\":\"CYLINDER\"`;`\"coated\":true`;`\"declaredBy\":\" \"`;/declaredBy;MISSING",
            "`\"kind\":\"CYLINDER\"`;`\"coated\":true`;`\"statement\":null`;/statement;MISSING",
            "`\"kind\":\"CYLINDER\"`;`\"coated\":true`;`\"declaredOn\":null`;/declaredOn;MISSING",
            "`\"kind\":\"CYLINDER\"`;`\"coated\":true`;`\"declaredOn\":\"2026-11-28\"`;/declaredOn;IN_THE_FUTURE",
            "`\"kind\":\"CYLINDER\"`;`\"coated\":true`;`\"declaredOn\":\"1899-12-31\"`;/declaredOn;OUT_OF_RANGE"})
    void eachIsNamed(String group, String facts, String more, String pointer, String code) {
        var body = body(unquoted(group), unquoted(facts), unquoted(more));
        var session = api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString());
        tables.unchangedBy(() -> {
            for (var path : new String[]{"/api/declarations", "/api/declarations/previews"}) {
                assertThat(session.post(path, body).expectProblem(400, "INVALID_INPUT").errors())
                        .containsExactly(Map.entry(pointer, code));
            }
        });
    }

    private static String unquoted(String cell) {
        return cell.equals("''") ? "" : cell;
    }

    @Test
    void aDeclarationThatIsNotThere() {
        var session = api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString());
        tables.unchangedBy(() -> {
            session.get("/api/declarations/" + NOBODY).expectProblem(404, "NOT_FOUND");
            session.post("/api/declarations/" + NOBODY + "/withdrawal", "{\"reason\":\"x\"}")
                    .expectProblem(404, "NOT_FOUND");
            session.post("/api/declarations/" + NOBODY + "/withdrawal", "{}").expectProblem(400, "INVALID_INPUT");
            session.get("/api/declarations?cursor=x").expectProblem(400, "INVALID_INPUT");
        });
    }
}
