package org.collarbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.locks.LockSupport;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The documented body of every operation with one field, at any depth, that is wrong, so that the wrong value is what is
 * looked at. Which values a field is given is drawn by a seed that is printed; set {@code -Dseed} to repeat a run.
 */
@RegisterTest
class WrongFieldsTests {

    private static final String HERE = "the-value-stands-here";
    /** What the database cannot store as text: given to each field. */
    private static final List<String> UNSTORABLE = List.of("\"\\u0000\"", "\"a\\u0000b\"", "\"\\ud800\"");
    private static final List<String> OTHERS = List.of("\"\"", "\" \"", "\"x\"", "\"-1\"", "\"\\udc00\\ud800\"",
            "\"\\u0007\\u001b\"", "\"\\u202e\\ufeff\"", "\"\\ud83d\\udca5\"", "\"" + "x".repeat(5000) + "\"",
            "\"'; drop table container--\"", "\"NaN\"", "\"1e9\"", "-1", "0", "1e400", "1e-400", "-0.0",
            "0.12345678901234567890", "2147483648", "9223372036854775808", "99999999999999999999999999", "true", "null",
            "[]", "{}", "[null]", "[[]]", "[{}]", "{\"x\":null}", "[".repeat(400) + "]".repeat(400), "\"0000-01-01\"",
            "\"9999-12-31\"", "\"+999999999-12-31\"", "\"-999999999-01-01\"", "\"9999-12\"",
            "\"9999-12-31T23:59:59.999999999Z\"", "\"2026-02-30\"", "\"00000000-0000-0000-0000-000000000000\"");
    private static final int DRAWN = 8;
    private static final int ASKED_AGAIN = 400;
    /** Loads what the rest of the register would be told from. */
    private static final List<String> LEFT_OUT = List.of("/api/demo");

    private record Request(String operation, String verb, String path, String body) {}

    private final Api api;
    private final Tables tables;
    private final JdbcClient jdbc;
    private final Map<String, String> ids;
    private final List<String> faults = new ArrayList<>();
    private final Map<Integer, Integer> counts = new TreeMap<>();
    private final List<Request> refused = new ArrayList<>();
    private final Set<String> looked = new TreeSet<>();

    WrongFieldsTests(Api api, Given given, Tables tables, JdbcClient jdbc) {
        this.api = api;
        this.tables = tables;
        this.jdbc = jdbc;
        var customer = given.customer();
        this.ids = Map.of("containers", given.registered().toString(), "customers", customer.toString(), "sites",
                given.site(customer).toString(), "exceptions", "2026-12-24", "holidays", "2026-12-24", "column-maps",
                "wrong");
    }

    @Test
    void areRefusedByAProblemOrTakenForWhatTheySay() {
        long seed = Long.getLong("seed", System.nanoTime());
        var random = new Random(seed);
        System.out.println("wrong fields are drawn by -Dseed=" + seed);
        long begun = System.nanoTime();
        var document = api.anonymous().get("/api-docs").expect(200).json();
        var requests = new ArrayList<Request>();
        document.at("/paths").properties().forEach(path -> path.getValue().properties()
                .forEach(operation -> requests.addAll(requests(document, path.getKey(), operation.getKey(),
                        operation.getValue(), random))));
        requests.forEach(this::send);
        System.out.println("wrong fields by status: " + counts + " in "
                + (System.nanoTime() - begun) / 1_000_000_000 + " s");
        var all = new TreeSet<>(requests.stream().map(Request::operation).toList());
        System.out.println("wrong fields told by " + looked.size() + " of " + all.size() + " operations; the rest "
                + all.stream().filter(one -> !looked.contains(one)).toList());
        assertThat(faults).isEmpty();
        assertThat(requests).hasSizeGreaterThan(3000);
        assertThat(refused).hasSizeGreaterThan(requests.size() / 2);
        changeNothing(random);
    }

    private void changeNothing(Random random) {
        for (long end = System.nanoTime() + 60_000_000_000L; System.nanoTime() < end && underWay();) {
            LockSupport.parkNanos(50_000_000);
        }
        Collections.shuffle(refused, random);
        var again = List.copyOf(refused.subList(0, Math.min(ASKED_AGAIN, refused.size())));
        tables.unchangedBy(() -> again.forEach(this::send));
        assertThat(faults).isEmpty();
    }

    /** Jobs that some of the requests have asked for. */
    private boolean underWay() {
        return jdbc.sql("""
                select exists (select from pull_plan where status in ('QUEUED', 'RUNNING'))
                    or exists (select from schedule_export where status in ('QUEUED', 'RUNNING'))""")
                .query(Boolean.class).single();
    }

    private List<Request> requests(JsonNode document, String template, String method, JsonNode operation,
            Random random) {
        var media = operation.at("/requestBody/content/application~1json");
        if (!media.path("example").isObject() || LEFT_OUT.contains(template)) {
            return List.of();
        }
        var requests = new ArrayList<Request>();
        var path = path(template);
        for (var body : withAPlace(document, media)) {
            var others = new ArrayList<>(OTHERS);
            Collections.shuffle(others, random);
            var values = new ArrayList<>(UNSTORABLE);
            values.addAll(others.subList(0, DRAWN));
            values.forEach(value -> requests.add(new Request(method + " " + template,
                    method.toUpperCase(Locale.ROOT), path,
                    body.replace('"' + HERE + '"', value))));
        }
        return requests;
    }

    private String path(String template) {
        var path = new StringBuilder();
        var before = "";
        for (var step : template.substring(1).split("/")) {
            path.append('/').append(step.startsWith("{")
                    ? ids.getOrDefault(before, UUID.randomUUID().toString())
                    : step);
            before = step;
        }
        return path.toString();
    }

    /** The example with each of its fields replaced in turn, and with each that it leaves out. */
    private static List<String> withAPlace(JsonNode document, JsonNode media) {
        var example = media.path("example");
        var bodies = new ArrayList<String>();
        replaced(example, example, bodies);
        var reference = media.at("/schema/$ref").asString("");
        document.at(reference.isEmpty() ? "/nothing" : reference.substring(1)).path("properties").propertyNames()
                .forEach(name -> {
                    if (!example.has(name)) {
                        bodies.add(((ObjectNode) example.deepCopy()).put(name, HERE).toString());
                    }
                });
        return bodies;
    }

    private static void replaced(JsonNode root, JsonNode node, List<String> bodies) {
        if (node instanceof ObjectNode object) {
            for (var name : List.copyOf(object.propertyNames())) {
                var value = object.get(name);
                replaced(root, value, bodies);
                object.put(name, HERE);
                bodies.add(root.toString());
                object.set(name, value);
            }
        } else if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                var value = array.get(i);
                replaced(root, value, bodies);
                array.set(i, HERE);
                bodies.add(root.toString());
                array.set(i, value);
            }
        }
    }

    private void send(Request request) {
        var session = api.as(request.path.startsWith("/api/portal") ? Role.CLERK : Role.ADMINISTRATOR)
                .with("Idempotency-Key", UUID.randomUUID().toString());
        if (request.verb.equals("PUT")) {
            var etag = session.get(request.path).headers().firstValue("ETag");
            session = session.with("If-Match", etag.orElse("\"1\""));
        }
        try {
            var answer = session.send(request.verb, request.path, request.body);
            counts.merge(answer.status(), 1, Integer::sum);
            if (WrongRequestsTests.isFault(answer) && !WrongRequestsTests.isBusy(answer)) {
                fault(request, answer);
            } else if (answer.status() >= 400 && answer.status() < 500) {
                refused.add(request);
                if (answer.status() == 400) {
                    looked.add(request.operation);
                }
            }
        } catch (AssertionError unlikeTheDocument) {
            fault(request, unlikeTheDocument.getMessage());
        }
    }

    private void fault(Request request, Object answer) {
        faults.add(request.verb + " " + request.path + " " + WrongRequestsTests.shortened(request.body) + "\n"
                + WrongRequestsTests.shortened(String.valueOf(answer)));
    }
}
