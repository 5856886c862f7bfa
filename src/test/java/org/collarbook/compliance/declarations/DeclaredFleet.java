package org.collarbook.compliance.declarations;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.jspecify.annotations.Nullable;

/** Cylinders of a maker of their own, of which somebody declares something. */
final class DeclaredFleet {

    final String maker = "D" + Given.serial();
    private final Api.Session clerk;
    private final Given given;

    DeclaredFleet(Api api, Given given) {
        this.clerk = api.as(Role.CLERK);
        this.given = given;
    }

    /** Made in June 2020 and nowhere in particular: in date, once its jurisdiction is known; change what it is about. */
    UUID cylinder(Object... pairs) {
        var body = body(pairs);
        return given.registered(body);
    }

    Map<String, @Nullable Object> body(@Nullable Object... pairs) {
        var body = Given.cylinder();
        body.put("maker", maker);
        body.put("manufactured", "6-20");
        for (int i = 0; i < pairs.length; i += 2) {
            body.put(String.valueOf(pairs[i]), pairs[i + 1]);
        }
        return body;
    }

    UUID registered(Map<String, @Nullable Object> body) {
        return given.registered(body);
    }

    Map<String, @Nullable Object> declaration(Map<String, Object> facts) {
        return declaration(facts, Map.of("maker", maker));
    }

    static Map<String, @Nullable Object> declaration(Object facts, Object group) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("declaredBy", "the plant manager");
        body.put("declaredOn", "2026-11-20");
        body.put("statement", "All of them were looked at in the yard.");
        body.put("facts", facts);
        body.put("group", group);
        body.put("onlyUnknown", true);
        return body;
    }

    Answer declared(Map<String, Object> facts) {
        return send("/api/declarations", declaration(facts)).expect(201);
    }

    Answer send(String path, Object body) {
        return clerk.with("Idempotency-Key", UUID.randomUUID().toString()).post(path, body);
    }

    Answer withdrawn(String declaration) {
        return send("/api/declarations/" + declaration + "/withdrawal", Map.of("reason", "another yard was meant"));
    }

    Answer assessment(UUID container, String query) {
        return clerk.get("/api/containers/" + container + "/assessment" + query).expect(200);
    }

    String status(UUID container) {
        return assessment(container, "").text("/status");
    }

    Answer container(UUID id) {
        return clerk.get("/api/containers/" + id).expect(200);
    }

    /** Counts of a whole: filled/known/contradicting. */
    static String counts(Answer answer, String at) {
        return String.join("/", List.of(answer.text(at + "/filled"), answer.text(at + "/known"),
                answer.text(at + "/contradicting")));
    }

    boolean isWhole(UUID container) {
        return clerk.get("/api/audit/verification?container=" + container).expect(200).at("/whole").asBoolean();
    }
}
