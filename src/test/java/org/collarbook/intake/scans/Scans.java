package org.collarbook.intake.scans;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.jspecify.annotations.Nullable;

import com.fasterxml.jackson.annotation.JsonRawValue;
import com.fasterxml.jackson.annotation.JsonValue;
import tools.jackson.databind.json.JsonMapper;

/** Lines and batches as a depot's device would write them. */
final class Scans {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    /** A line that is written as it stands. */
    record Raw(@JsonRawValue @JsonValue String json) {}

    private final Api api;

    Scans(Api api) {
        this.api = api;
    }

    static Map<String, @Nullable Object> line(String kind, @Nullable UUID container, String at, Object... more) {
        var line = new LinkedHashMap<String, @Nullable Object>();
        line.put("id", Given.serial());
        line.put("kind", kind);
        line.put("occurredAt", at);
        line.put("containerId", container);
        for (int i = 0; i < more.length; i += 2) {
            line.put((String) more[i], more[i + 1]);
        }
        return line;
    }

    /** 19 lb of 0.508 in it afterwards, looked at: what a 20 lb cylinder in date may have. */
    static Map<String, @Nullable Object> fill(@Nullable UUID container, String at, Object... more) {
        var line = line("FILL", container, at, "specificGravity", 0.508, "netAfterLb", 19, "lookedAt", true);
        for (int i = 0; i < more.length; i += 2) {
            line.put((String) more[i], more[i + 1]);
        }
        return line;
    }

    static Map<String, @Nullable Object> batch(List<?> lines) {
        return new LinkedHashMap<>(Map.of("batchId", "B" + Given.serial(), "lines", lines));
    }

    Answer send(Role role, Object batch) {
        return api.as(role).with("Idempotency-Key", UUID.randomUUID().toString()).post("/api/scan-batches", batch);
    }

    Answer send(Object... lines) {
        return send(Role.CLERK, batch(Arrays.asList(lines)));
    }

    String text(Object line) {
        return JSON.writeValueAsString(line);
    }

    static List<String> outcomes(Answer answer) {
        return texts(answer, "/lines", "outcome");
    }

    static List<String> texts(Answer answer, String list, String field) {
        var texts = new ArrayList<String>();
        answer.at(list).forEach(one -> texts.add(one.path(field).asString("")));
        return texts;
    }
}
