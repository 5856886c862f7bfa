package org.collarbook.intake;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.apache.commons.csv.CSVFormat;
import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.jspecify.annotations.Nullable;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A ledger under test: rows of named cells, handed in as a clerk would. */
public final class Ledger {

    private static final Set<String> SETTLED = Set.of("CHECKED", "COMMITTED", "FAILED", "CANCELLED");
    private static final long PATIENCE_NANOS = 120_000_000_000L;

    private final List<Map<String, String>> rows = new ArrayList<>();

    /** A 20 lb cylinder with nothing wrong: the cells given, by name and value in turn, go over these. */
    public Ledger row(String... cells) {
        var row = new LinkedHashMap<String, String>();
        row.put("kind", "");
        row.put("specification", "DOT-4BA240");
        row.put("maker", "KVR");
        row.put("serial", Given.serial());
        row.put("manufactured", "5-04");
        row.put("water_capacity", "47.6 lb");
        row.put("tare", "17.0 lb");
        row.put("owner", "distributor");
        for (int i = 0; i < cells.length; i += 2) {
            row.put(cells[i], cells[i + 1]);
        }
        rows.add(row);
        return this;
    }

    /** The header and the rows below it. */
    List<List<String>> table() {
        var columns = new ArrayList<String>();
        rows.forEach(row -> row.keySet().stream().filter(name -> !columns.contains(name)).forEach(columns::add));
        var table = new ArrayList<List<String>>();
        table.add(columns);
        rows.forEach(row -> table.add(columns.stream().map(name -> row.getOrDefault(name, "")).toList()));
        return table;
    }

    String csv() {
        return csv(",", table());
    }

    static String csv(String delimiter, List<List<String>> table) {
        var format = CSVFormat.RFC4180.builder().setDelimiter(delimiter).get();
        var text = new StringBuilder();
        table.forEach(row -> text.append(format.format(row.toArray())).append("\r\n"));
        return text.toString();
    }

    /** All that a fleet in LP-gas service may declare; zone and jurisdiction for the sites it opens. */
    public static Map<String, Object> declaration() {
        var said = new LinkedHashMap<String, Object>();
        said.put("declaredBy", "the yard foreman of the tests");
        said.put("declaredOn", "2026-11-20");
        said.put("statement", "Every cylinder of this ledger was looked at in the yard.");
        said.put("jurisdiction", "US");
        said.put("zone", "America/Chicago");
        said.put("coated", true);
        said.put("marksLegible", true);
        said.put("rinSeen", true);
        said.put("service", Map.of("lading", "LPG", "exclusive", true, "corrosionFree", true));
        return said;
    }

    static Answer handIn(Api api, String csv, @Nullable Map<String, Object> declaration) {
        return handIn(api, csv.getBytes(StandardCharsets.UTF_8), declaration);
    }

    static Answer handIn(Api api, byte[] csv, @Nullable Map<String, Object> declaration) {
        return handIn(api, csv, declaration, Map.of());
    }

    /** With further parts of plain text, such as the name of a sheet. */
    static Answer handIn(Api api, byte[] csv, @Nullable Map<String, Object> declaration, Map<String, String> parts) {
        return handIn(api.as(Role.CLERK), csv, declaration, parts);
    }

    static Answer handIn(Api.Session clerk, byte[] csv, @Nullable Map<String, Object> declaration,
            Map<String, String> parts) {
        var body = new ByteArrayOutputStream();
        parts.forEach((name, text) -> part(body, name, text.getBytes(StandardCharsets.UTF_8)));
        if (declaration != null) {
            part(body, "declaration\"\r\nContent-Type: application/json",
                    new JsonMapper().writeValueAsBytes(declaration));
        }
        part(body, "ledger\"; filename=\"ledger.csv\"\r\nContent-Type: text/csv", csv);
        body.writeBytes("--gap--\r\n".getBytes(StandardCharsets.US_ASCII));
        return clerk.with("Content-Type", "multipart/form-data; boundary=gap").post("/api/imports", body.toByteArray());
    }

    private static void part(ByteArrayOutputStream body, String name, byte[] content) {
        body.writeBytes(("--gap\r\nContent-Disposition: form-data; name=\"" + name + (name.contains("\"") ? "" : "\"")
                + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
        body.writeBytes(content);
        body.writeBytes("\r\n".getBytes(StandardCharsets.US_ASCII));
    }

    /** Handed in, and checked by now. */
    static Answer checked(Api api, String csv, @Nullable Map<String, Object> declaration) {
        return checked(api, csv.getBytes(StandardCharsets.UTF_8), declaration);
    }

    static Answer checked(Api api, byte[] csv, @Nullable Map<String, Object> declaration) {
        return checked(api, csv, declaration, Map.of());
    }

    static Answer checked(Api api, byte[] csv, @Nullable Map<String, Object> declaration,
            Map<String, String> parts) {
        return over(api, handIn(api, csv, declaration, parts).expect(202), "CHECKED");
    }

    static Answer commit(Api api, Answer checked, String refused) {
        return api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString()).ifMatch(checked)
                .post("/api/imports/" + checked.id() + "/commit", Map.of("refused", refused));
    }

    /** Its commit asked for, and done by now. */
    static Answer committed(Api api, Answer checked, String refused) {
        return over(api, commit(api, checked, refused).expect(202), "COMMITTED");
    }

    /** Waits for the end of the latest pass, which must be this one. */
    public static Answer over(Api api, Answer queued, String state) {
        for (long end = System.nanoTime() + PATIENCE_NANOS; System.nanoTime() < end;) {
            var report = api.as(Role.CLERK).get("/api/imports/" + queued.id()).expect(200);
            if (SETTLED.contains(report.text("/state"))) {
                if (!report.text("/state").equals(state)) {
                    throw new AssertionError("expected " + state + ": " + report.body());
                }
                return report;
            }
            LockSupport.parkNanos(10_000_000);
        }
        throw new AssertionError("it never came to an end: " + queued.body());
    }

    /** Checked and committed without a row that is not taken. */
    public Answer load(Api api, @Nullable Map<String, Object> declaration) {
        return committed(api, checked(api, csv(), declaration), "ABORT");
    }

    /** The counts as read/new/changed/unchanged/refused/ambiguous, which must add up. */
    static String rows(Answer report) {
        JsonNode rows = report.at("/rows");
        var counts = Stream.of("read", "new", "changed", "unchanged", "refused", "ambiguous")
                .map(name -> rows.at("/" + name).asLong()).toList();
        if (counts.getFirst() != counts.stream().skip(1).mapToLong(Long::longValue).sum()) {
            throw new AssertionError("the rows do not add up: " + rows);
        }
        return counts.stream().map(String::valueOf).collect(Collectors.joining("/"));
    }

    /** The first problem as line, column and code. */
    static String firstProblem(Answer report) {
        var problem = report.at("/problems/0");
        return problem.at("/line").asString() + " " + problem.at("/column").asString() + " "
                + problem.at("/code").asString();
    }
}
