package org.collarbook.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;

/** Files that are not in the template, read by a map that somebody saved. */
@RegisterTest
class ColumnMapTests {

    private static final String HEADER = "Spec;Serial #;WC (lb);Empty wt;Whose;Paint;Filled;Bay\n";

    private final Api api;
    private final Tables tables;
    private final String name = "map-" + Given.serial();

    ColumnMapTests(Api api, Tables tables) {
        this.api = api;
        this.tables = tables;
    }

    private static Map<String, Object> map() {
        var map = new HashMap<String, Object>();
        map.put("columns", Map.of("Spec", Map.of("column", "specification"), "serial  #", Map.of("column", "serial"),
                "WC (lb)", Map.of("column", "water_capacity", "unit", "lb"), "Empty wt",
                Map.of("column", "tare", "unit",
                        "kg"),
                "Whose", Map.of("column", "owner"), "Paint", Map.of("column", "coated"), "Filled",
                Map.of("column", "filled_on")));
        map.put("fixed", Map.of("kind", "CYLINDER"));
        map.put("ignored", List.of("Bay"));
        map.put("words", Map.of("owner", Map.of("OURS", "distributor"), "coated", Map.of("painted", "yes", "bare",
                "no")));
        map.put("dateFormat", "MM/dd/yyyy");
        return map;
    }

    private Answer put(Object map) {
        return api.as(Role.CLERK).put("/api/column-maps/" + name, map);
    }

    private Answer handIn(String csv) {
        return Ledger.handIn(api, csv.getBytes(StandardCharsets.UTF_8), Ledger.declaration(), Map.of("map", name));
    }

    private Answer checked(String csv) {
        return Ledger.over(api, handIn(csv).expect(202), "CHECKED");
    }

    @Test
    void aFileIsReadByTheMapAndCommittedByTheMapAsItWas() {
        var kept = put(map()).expect(201);
        var serial = Given.serial();
        var checked = checked(HEADER + "DOT-4BA240;" + serial + ";47.6;7.71;Ours;Painted;3/2/2026;12\n");
        assertEquals("1/1/0/0/0/0", Ledger.rows(checked), checked.body());
        assertEquals(name, checked.text("/columnMap/name"));
        assertEquals(0, checked.at("/columnMap/version").asInt());
        // since then the map says the opposite of the days
        var other = map();
        other.put("dateFormat", "dd/MM/yyyy");
        assertEquals(1, api.as(Role.CLERK).ifMatch(kept).put("/api/column-maps/" + name, other).expect(200)
                .at("/version").asInt());
        var committed = Ledger.committed(api, checked, "ABORT");
        assertEquals(0, committed.at("/columnMap/version").asInt());
        var id = api.as(Role.CLERK).get("/api/containers?serial=" + serial).expect(200).text("/items/0/id");
        var container = api.as(Role.CLERK).get("/api/containers/" + id).expect(200).body();
        assertTrue(container.contains("47.6 lb") && container.contains("7.71 kg"), container);
        assertTrue(container.contains("\"coated\":true") && container.contains("\"owned\":true"), container);
        assertTrue(api.as(Role.CLERK).get("/api/containers/" + id + "/fills").expect(200).body()
                .contains("2026-03-02"));
    }

    @Test
    void whatNeitherTheMapNorTheTemplateKnowsIsRefusedWithAllThatIsKnown() {
        put(map()).expect(201);
        tables.unchangedBy(() -> {
            var answer = handIn(HEADER.replace("Bay", "Dock") + "DOT-4BA240;1;1;1;x;no;;\n")
                    .expectProblem(400, "LEDGER_HEADER");
            assertEquals("Dock", answer.text("/errors/0/found"));
            assertTrue(answer.at("/columns").toString().contains("\"WC (lb)\""), answer.body());
            assertEquals("DUPLICATE_COLUMN", handIn(HEADER.replace("Bay", "kind") + "x\n").expectProblem(400,
                    "LEDGER_HEADER").text("/errors/0/code"));
            assertEquals(Map.of("map", "UNKNOWN_MAP"), Ledger.handIn(api, new byte[0], null, Map.of("map", "none"))
                    .expectProblem(400, "INVALID_INPUT").errors());
        });
        var problems = checked(HEADER + "DOT-4BA240;" + Given.serial() + ";47.6;7.7;x;rusty;15/02/2026;\n")
                .at("/problems");
        assertEquals("[UNKNOWN_WORD, INVALID_DATE]", problems.findValuesAsString("code").toString());
        var accepted = problems.findValuesAsString("accepted");
        assertTrue(accepted.get(0).contains("yes or no") && accepted.get(0).contains("painted"), accepted.get(0));
        assertTrue(accepted.get(1).contains("MM/dd/yyyy"), accepted.get(1));
        // a unit beside the number that is another than the heading's
        assertEquals("UNIT_CONTRADICTS", checked(HEADER + "DOT-4BA240;" + Given.serial() + ";47.6 kg;;;;;\n")
                .text("/problems/0/code"));
    }

    /** What the template says keeps its meaning, in whatever way it is written: a map makes no no into a yes. */
    @Test
    void noMapTurnsAWordOfTheTemplateIntoAnother() {
        tables.unchangedBy(() -> {
            refused("status", Map.of("leaking", "in service"), "/words/status/leaking=WORD_OF_THE_TEMPLATE");
            refused("status", Map.of("Condemned since 2020-01", "in service"),
                    "/words/status/Condemned since 2020-01=WORD_OF_THE_TEMPLATE");
            refused("status", Map.of("bay 3; LEAKING", "in service"),
                    "/words/status/bay 3; LEAKING=WORD_OF_THE_TEMPLATE");
            refused("status", Map.of("x", "zzz"), "/words/status/x=UNKNOWN_WORD");
            refused("lading", Map.of("anhydrous ammonia", "LPG"),
                    "/words/lading/anhydrous ammonia=WORD_OF_THE_TEMPLATE");
            refused("manufactured", Map.of("5-02", "5-20"), "/words/manufactured=NOT_FOR_THIS_COLUMN");
            refused("serial", Map.of("1", "2"), "/words/serial=NOT_FOR_THIS_COLUMN");
            refused("last_test_mark", Map.of("3-12E", "none"), "/words/last_test_mark/3-12E=WORD_OF_THE_TEMPLATE");
            refused("last_test_mark", Map.of("new", "3-25E"), "/words/last_test_mark/new=UNKNOWN_WORD");
            refused("specification", Map.of("4BA240", "DOT-4E240"), "/words/specification/4BA240=WORD_OF_THE_TEMPLATE");
            put(Map.of("fixed", Map.of("status", "zzz"))).expectProblem(400, "INVALID_INPUT");
        });
        put(Map.of("words", Map.of("status", Map.of("RED TAG", "leaking; dented", "ok", "in service"), "lading",
                Map.of("gas", "LPG")))).expect(201);
    }

    private void refused(String column, Map<String, String> words, String error) {
        assertEquals("{" + error + "}", put(Map.of("words", Map.of(column, words))).expectProblem(400, "INVALID_INPUT")
                .errors().toString());
    }

    @Test
    void allThatIsWrongWithAMapIsToldAtOnce() {
        var wrong = Map.of("columns", Map.of("a/b", Map.of("column", "colour"), "c", Map.of("column", "tare", "unit",
                "gal"), "d", Map.of("column", "maker", "unit", "lb"), "e", Map.of(), "f", Map.of("column", "site")),
                "fixed", Map.of("kind", "BOTTLE", "serial", "1", "filled_on", "3/2/2026", "site", "S-1"),
                "ignored", List.of("F", "g", "G "), "words", Map.of("coated", Map.of("painted", "maybe", "no", "yes"),
                        "hue", Map.of()),
                "dateFormat", "MM/dd/yy");
        tables.unchangedBy(() -> {
            var errors = new TreeMap<String, String>();
            errors.put("/columns/a~1b/column", "UNKNOWN_COLUMN");
            errors.put("/columns/c/unit", "UNKNOWN_UNIT");
            errors.put("/columns/d/unit", "NOT_FOR_THIS_COLUMN");
            errors.put("/columns/e/column", "MISSING");
            errors.put("/fixed/kind", "UNKNOWN_WORD");
            errors.put("/fixed/serial", "NOT_FOR_THIS_COLUMN");
            errors.put("/fixed/filled_on", "INVALID_DATE");
            errors.put("/fixed/site", "TOLD_TWICE");
            errors.put("/ignored/0", "TOLD_TWICE");
            errors.put("/ignored/2", "TOLD_TWICE");
            errors.put("/words/coated/painted", "UNKNOWN_WORD");
            errors.put("/words/coated/no", "WORD_OF_THE_TEMPLATE");
            errors.put("/words/hue", "UNKNOWN_COLUMN");
            errors.put("/dateFormat", "INVALID_DATE_FORMAT");
            assertEquals(errors, put(wrong).expectProblem(400, "INVALID_INPUT").errors());
            put(Map.of("colour", "red")).expectProblem(400, "INVALID_INPUT");
            put("null").expect(400);
            api.as(Role.CLERK).put("/api/column-maps/a%20b", map()).expectProblem(400, "INVALID_INPUT");
            api.as(Role.YARD).put("/api/column-maps/" + name, map()).expectProblem(403, "FORBIDDEN");
        });
    }

    @Test
    void aMapIsReplacedAndDroppedByItsVersionAndNoVersionComesTwice() {
        var clerk = api.as(Role.CLERK);
        var path = "/api/column-maps/" + name;
        clerk.get(path).expectProblem(404, "NOT_FOUND");
        clerk.with("If-Match", "\"0\"").put(path, map()).expectProblem(404, "NOT_FOUND");
        var first = put(map()).expect(201);
        assertEquals("\"0\"", first.etag());
        put(map()).expectProblem(428, "IF_MATCH_REQUIRED");
        var second = clerk.ifMatch(first).put(path, Map.of("ignored", List.of("x"))).expect(200);
        clerk.ifMatch(first).put(path, map()).expectProblem(412, "STALE_VERSION");
        clerk.ifMatch(first).delete(path).expectProblem(412, "STALE_VERSION");
        clerk.delete(path).expectProblem(428, "IF_MATCH_REQUIRED");
        assertEquals(second.body(), clerk.get(path).expect(200).body());
        assertTrue(clerk.get("/api/column-maps").expect(200).at("/items").findValuesAsString("name").contains(name));
        clerk.ifMatch(second).delete(path).expect(204);
        clerk.get(path).expectProblem(404, "NOT_FOUND");
        clerk.ifMatch(second).delete(path).expectProblem(404, "NOT_FOUND");
        Ledger.handIn(api, new byte[0], null, Map.of("map", name)).expectProblem(400, "INVALID_INPUT");
        assertEquals("\"2\"", put(map()).expect(201).etag());
    }

    @Test
    void aDayIsReadInTheOrderThatTheMapTells() {
        var days = new TreeMap<String, String>();
        for (var format : List.of("MM/dd/yyyy", "dd/MM/yyyy", "d.M.yyyy", "dd MMM yyyy", "yyyy/MM/dd")) {
            var read = DayFormat.of(format);
            for (var text : List.of("03/02/2026", "3/2/2026", "2.3.2026", "02 mar 2026", "2026/03/02", "02/30/2026")) {
                var day = read == null ? null : read.parse(text);
                if (day != null) {
                    days.put(format + " " + text, day.toString());
                }
            }
        }
        assertEquals(Map.of("MM/dd/yyyy 03/02/2026", "2026-03-02", "MM/dd/yyyy 3/2/2026", "2026-03-02",
                "dd/MM/yyyy 03/02/2026", "2026-02-03", "dd/MM/yyyy 3/2/2026", "2026-02-03", "d.M.yyyy 2.3.2026",
                "2026-03-02", "dd MMM yyyy 02 mar 2026", "2026-03-02", "yyyy/MM/dd 2026/03/02", "2026-03-02"), days);
        for (var wrong : List.of("MM/dd/yy", "MM/yyyy", "dd/dd/yyyy", "MM-dd/yyyy", "yyyyMMdd", "d", "")) {
            assertEquals(null, DayFormat.of(wrong), wrong);
        }
    }
}
