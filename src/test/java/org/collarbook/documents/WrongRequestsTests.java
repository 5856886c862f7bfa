package org.collarbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Pattern;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

import tools.jackson.databind.JsonNode;

/**
 * Every operation of the API document is asked wrongly: ids, parameters, headers, bodies of wrong type, size, form and
 * encoding. Each is refused by a problem that tells nothing of the inside, and nothing changes.
 */
@RegisterTest
class WrongRequestsTests {

    private static final List<String> IDS = List.of(UUID.randomUUID().toString(), "x", "-1", "%00", "..%2F..%2Fetc",
            "%F0%9F%92%A5", "%ED%A0%80", "a".repeat(4000), "null", "%27%20or%201=1--");
    private static final List<String> VALUES = List.of("", "x", "-1", "1e9", "99999999999999999999", "2026-02-30",
            "%2B999999999-12-31",
            "-999999999-01-01", "0000-01-01", "9999-12-31", "%2B999999999-12", "0000-01",
            "%2B1000000000-01-01T00:00:00Z", "%2B999999999-01-01T00:00:00Z", "-999999999-01-01T00:00:00Z",
            "0000-01-01T00:00:00Z",
            "%F0%9F%92%A5", "%C3%28", "%27;drop%20table%20container--", "a".repeat(4000));
    private static final List<String> BODIES = List.of("", "null", "[]", "{", "1", "\"x\"", "{\"zz\":1}",
            "[".repeat(5000), "{\"zz\":\"" + "a".repeat(100_000) + "\"}", "{\"zz\":1,\"zz\":2}", "{\"\\u0000\":1}",
            "\ufeff{\"zz\":1}", "{\"zz\":1e999999}", "{} {}");
    private static final List<String> WRONG = List.of("{}", "[]", "[[]]", "-1", "1e400", "\"\"", "\"\\u0000\"", "true",
            "\"" + "x".repeat(5000) + "\"", "{\"zz\":1}");

    /** In place of a month, day or moment. */
    private static final List<String> FAR = List.of("+999999999-12-31", "-999999999-01-01", "0000-01-01",
            "+999999999-12",
            "-999999999-01", "0000-01", "+1000000000-01-01T00:00:00Z", "-1000000000-01-01T00:00:00Z",
            "0000-01-01T00:00:00Z");
    private static final Pattern WRITTEN_TIME = Pattern.compile("\"\\d{4}-\\d{2}(-\\d{2}(T[^\"]*)?)?\"");

    private final Api api;
    private final Tables tables;
    private final List<String> faults = new ArrayList<>();
    private final Map<Integer, Integer> counts = new TreeMap<>();
    private int busy;

    WrongRequestsTests(Api api, Tables tables) {
        this.api = api;
        this.tables = tables;
    }

    @Test
    void areRefusedAndChangeNothing() {
        var document = api.anonymous().get("/api-docs").expect(200).json();
        tables.unchangedBy(() -> document.at("/paths").properties()
                .forEach(path -> path.getValue().properties()
                        .forEach(operation -> ask(document, path.getKey(), operation.getKey(), operation.getValue()))));
        int all = counts.values().stream().mapToInt(Integer::intValue).sum();
        System.out.println("wrong requests by status: " + counts + ", " + busy + " of " + all + " told to come again");
        assertThat(faults).isEmpty();
        assertThat(all).isGreaterThan(5000);
        assertThat(busy).as("of " + all + " told that the service is busy").isLessThanOrEqualTo(all / 50);
    }

    private void ask(JsonNode document, String template, String method, JsonNode operation) {
        var path = template.replaceAll("\\{[^}]+}", UUID.randomUUID().toString());
        var verb = method.toUpperCase(Locale.ROOT);
        boolean hasBody = operation.has("requestBody");
        if (template.contains("{")) {
            IDS.forEach(
                    id -> send(Map.of(), verb, template.replaceAll("\\{[^}]+}", id), hasBody ? "{\"zz\":1}" : null));
        }
        for (var parameter : operation.path("parameters")) {
            if (parameter.path("in").asString().equals("query") && verb.equals("GET")) {
                VALUES.forEach(
                        value -> send(Map.of(), verb, path + "?" + parameter.path("name").asString() + "=" + value,
                                null));
                sendNul(path + "?" + parameter.path("name").asString() + "=a%00b");
            }
        }
        if (hasBody) {
            bodies(document, operation).forEach(body -> send(Map.of(), verb, path, body));
            headers(verb, path);
        }
    }

    private static List<String> bodies(JsonNode document, JsonNode operation) {
        var bodies = new ArrayList<>(BODIES);
        var schema = operation.at("/requestBody/content/application~1json/schema");
        var reference = schema.path("$ref").asString("");
        document.at(reference.isEmpty() ? "/nothing" : reference.substring(1)).path("properties").propertyNames()
                .forEach(name -> WRONG.forEach(value -> bodies.add("{\"" + name + "\":" + value + ",\"zz\":1}")));
        bodies.addAll(farAway(operation.at("/requestBody/content/application~1json/example").toString()));
        return bodies;
    }

    /** The example, each of its times in turn far away from all that there is. */
    private static List<String> farAway(String example) {
        var bodies = new ArrayList<String>();
        for (var time = WRITTEN_TIME.matcher(example); time.find();) {
            FAR.forEach(far -> bodies.add(example.substring(0, time.start() + 1) + far
                    + example.substring(time.end() - 1)));
        }
        return bodies;
    }

    private void headers(String verb, String path) {
        for (var header : List.of(Map.of("Content-Type", "text/plain"), Map.of("Content-Type", "application/xml"),
                Map.of("Content-Type", "multipart/form-data"), Map.of("Content-Type", "application/json;charset=utf-7"),
                Map.of("If-Match", "x"), Map.of("If-Match", "\"999999999999999999999\""),
                Map.of("Idempotency-Key", "k".repeat(300)), Map.of("Accept", "image/png"), Map.of("Accept", "x"),
                Map.of("Content-Encoding", "gzip"))) {
            send(header, verb, path, "{\"zz\":1}");
        }
        send(Map.of(), verb, path, new byte[]{'{', '"', (byte) 0xc3, '(', '"', ':', '1', '}'});
        send(Map.of(), verb, path, "{\"zz\":1}".getBytes(StandardCharsets.UTF_16));
    }

    private void send(Map<String, String> headers, String verb, String path, @Nullable Object body) {
        var session = api.as(path.startsWith("/api/portal") ? Role.CLERK : Role.ADMINISTRATOR);
        for (var header : headers.entrySet()) {
            session = session.with(header.getKey(), header.getValue());
        }
        var answer = session.send(verb, path, body);
        counts.merge(answer.status(), 1, Integer::sum);
        if (isBusy(answer)) {
            busy++;
        } else if (isFault(answer)) {
            faults.add(verb + " " + shortened(path) + " " + headers + " " + shortened(String.valueOf(body)) + "\n"
                    + shortened(answer.toString()));
        }
    }

    /** What the database cannot store is refused before it is asked for it. */
    private void sendNul(String path) {
        var answer = api.as(path.startsWith("/api/portal") ? Role.CLERK : Role.ADMINISTRATOR).get(path);
        if (answer.status() != 400 || !answer.text("/errors/0/code").equals("INVALID_TEXT")) {
            faults.add("GET " + path + "\n" + shortened(answer.toString()));
        }
    }

    /** Told where a job of the kind is under way; what takes too long is a fault. */
    static boolean isBusy(Answer answer) {
        return answer.status() == 503 && answer.contentType().startsWith("application/problem+json")
                && answer.text("/code").equals("BUSY");
    }

    static boolean isFault(Answer answer) {
        return answer.status() >= 500 || answer.status() == 409 && answer.text("/code").equals("CONSTRAINT")
                || answer.status() >= 400
                        && (!answer.contentType().startsWith("application/problem+json") || answer.body()
                                .matches("(?s).*(Exception|org\\.collarbook\\.|org\\.spring|SQL|psql|\\tat ).*"));
    }

    static String shortened(String text) {
        return text.length() > 300 ? text.substring(0, 300) + "…" : text;
    }
}
