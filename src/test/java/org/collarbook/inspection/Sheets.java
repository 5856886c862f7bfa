package org.collarbook.inspection;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.jspecify.annotations.Nullable;

/** Records as they are sent; each a new one, so that a test changes what it is about. */
public final class Sheets {

    private static final AtomicInteger NUMBER = new AtomicInteger();

    private Sheets() {}

    public static String rin() {
        int next = NUMBER.getAndIncrement();
        return "%c%03d".formatted('A' + next / 1000, next % 1000);
    }

    public static Map<String, @Nullable Object> facility(String rin) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("rin", rin);
        body.put("name", "Bench " + rin);
        body.put("approval", Map.of("from", "2022-01-01", "expires", "2027-01-01"));
        return body;
    }

    /** The RIN of a facility that is approved from 2022 through the first day of 2027. */
    public static String approved(Api api) {
        var rin = rin();
        registered(api, rin);
        return rin;
    }

    static Answer registered(Api api, String rin) {
        return api.as(Role.CLERK).post("/api/requalifiers", facility(rin)).expect(201);
    }

    static Map<String, Object> item(String item, String finding) {
        return finding.equals("DEFECT")
                ? Map.of("item", item, "finding", finding, "note", "seen")
                : Map.of("item", item, "finding", finding);
    }

    public static Map<String, Object> looked(String... itemsAndFindings) {
        var items = new ArrayList<Map<String, Object>>();
        for (int i = 0; i < itemsAndFindings.length; i += 2) {
            items.add(item(itemsAndFindings[i], itemsAndFindings[i + 1]));
        }
        return Map.of("items", items);
    }

    private static Map<String, @Nullable Object> sheet(String method, String rin) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("performedOn", "2026-11-20");
        body.put("method", method);
        body.put("requalifier", rin);
        body.put("operator", "M. Holt");
        body.put("visual", looked("CORROSION", "SATISFACTORY", "DENTS", "SATISFACTORY", "FIRE_DAMAGE",
                "NOT_APPLICABLE"));
        return body;
    }

    public static Map<String, @Nullable Object> visual(String rin) {
        var body = sheet("EXTERNAL_VISUAL", rin);
        body.put("coating", "painted, sound");
        body.put("owner", "Owner and Sons");
        return body;
    }

    static Map<String, @Nullable Object> proof(String rin) {
        var body = sheet("PROOF_PRESSURE", rin);
        body.put("markedPressurePsig", 240);
        body.put("testPressurePsig", 480);
        return body;
    }

    public static Map<String, @Nullable Object> volumetric(String rin) {
        var body = proof(rin);
        body.put("method", "VOLUMETRIC_EXPANSION");
        body.put("expansion", expansion("63.2 cm3", "62.1 cm3", "1.1 cm3"));
        return body;
    }

    public static Map<String, @Nullable Object> expansion(@Nullable String total, @Nullable String elastic,
            @Nullable String permanent) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("total", total);
        body.put("elastic", elastic);
        body.put("permanent", permanent);
        return body;
    }

    /** A record of that day by a visual inspection that found a dent. */
    public static Map<String, @Nullable Object> rejected(String rin, String day) {
        var body = visual(rin);
        body.put("performedOn", day);
        body.put("visual", looked("DENTS", "DEFECT"));
        body.put("disposition", "to the maker for repair");
        return body;
    }

    public static Map<String, @Nullable Object> condemned(String rin) {
        var body = visual(rin);
        body.put("grounds", List.of("WEAKENING_CRACKS"));
        body.put("disposition", "cracked at the weld; crossed out by X's");
        return body;
    }

    public static Map<String, @Nullable Object> correction(String reason, @Nullable Object record) {
        var body = new LinkedHashMap<String, @Nullable Object>();
        body.put("reason", reason);
        body.put(record == null ? "void" : "record", record == null ? true : record);
        return body;
    }
}
