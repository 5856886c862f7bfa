package org.collarbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Locale;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Contract;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;

import tools.jackson.databind.JsonNode;

/** A filter whose name was mistyped is not taken for one that was applied, whichever endpoint is asked. */
@RegisterTest
class UnknownParametersTests {

    private final Api api;

    UnknownParametersTests(Api api) {
        this.api = api;
    }

    @Test
    void areRefusedByEveryOperation() {
        var passedOver = new ArrayList<String>();
        var asked = new ArrayList<String>();
        Contract.operations().forEach((pointer, operation) -> {
            if (takesJsonOrNothing(operation) && isOfStaff(pointer)) {
                asked.add(pointer);
                var path = pointer.substring("/paths/".length(), pointer.lastIndexOf('/')).replace("~1", "/")
                        .replace("{day}", "2026-12-24").replaceAll("\\{[^}]+}", UUID.randomUUID().toString());
                var method = pointer.substring(pointer.lastIndexOf('/') + 1).toUpperCase(Locale.ROOT);
                var answer = api.as(Role.ADMINISTRATOR).send(method, path + "?stie=DEPOT",
                        operation.has("requestBody") ? "{}" : null);
                if (answer.status() != 400 || !"UNKNOWN_PARAMETER".equals(answer.errors().get("stie"))) {
                    passedOver.add(method + " " + path + ": " + answer);
                }
            }
        });
        assertThat(passedOver).isEmpty();
        assertThat(asked).hasSizeGreaterThan(120);
    }

    /** Of a form each part is looked at by whoever takes it. */
    private static boolean takesJsonOrNothing(JsonNode operation) {
        return !operation.has("requestBody") || operation.at("/requestBody/content").has("application/json");
    }

    /** A subscribed calendar has its token in place of a key. */
    private static boolean isOfStaff(String pointer) {
        return !pointer.contains("{token}");
    }

    @Test
    void areToldWithThoseThatAreKnown() {
        var answer = api.as(Role.DISPATCHER).get("/api/pull-list?stie=DEPOT");
        assertThat(answer.at("/errors/0/accepted").asString()).contains("site", "before").doesNotContain("stie");
    }
}
