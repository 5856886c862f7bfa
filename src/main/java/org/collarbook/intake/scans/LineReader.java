package org.collarbook.intake.scans;

import java.time.Clock;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

import org.collarbook.compliance.fillcheck.WhichContainer;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Moments;
import org.collarbook.platform.Sha256;
import org.collarbook.platform.UnreadableJson;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reads each line of a batch by itself. */
@Component
class LineReader {

    private final JsonMapper json;
    private final Clock clock;

    LineReader(JsonMapper json, Clock clock) {
        this.json = json;
        this.clock = clock;
    }

    ReadLine read(int position, JsonNode sent) {
        if (!sent.isObject()) {
            return new ReadLine(position, null, content(sent), new ReadLine.Unreadable(List.of(
                    new FieldError("", "WRONG_TYPE", sent.toString(), "an object with the fields of a line"))));
        }
        var inputs = new Inputs();
        var id = id(sent.get("id"), inputs);
        var line = line(sent, inputs);
        var at = line == null ? null : Moments.past("/occurredAt", line.occurredAt(), clock.instant(), inputs);
        var marks = line == null ? Map.<String, WhichContainer>of() : marks(line, inputs);
        var errors = inputs.errors();
        return new ReadLine(position, id, content(sent), errors.isEmpty() && line != null && at != null
                ? new ReadLine.Line(line, at, marks)
                : new ReadLine.Unreadable(errors));
    }

    private static @Nullable String id(@Nullable JsonNode given, Inputs inputs) {
        if (given != null && !given.isString() && !given.isNull()) {
            inputs.refuse("/id", "WRONG_TYPE", given.toString(), "a text");
            return null;
        }
        return inputs.required("/id", given == null || given.isNull() ? null : given.stringValue(),
                ScanBatchRequest.LONGEST_ID);
    }

    private @Nullable ScanLine line(JsonNode sent, Inputs inputs) {
        var given = sent.get("kind");
        var kind = given == null || given.isNull() ? null : kind(given);
        if (kind == null) {
            inputs.refuse("/kind", given == null || given.isNull() ? "MISSING" : "UNKNOWN_WORD",
                    given == null || given.isNull() ? null : given.isString() ? given.stringValue() : given.toString(),
                    "one of " + String.join(", ", Arrays.stream(ScanKind.values()).map(Enum::name).toList()));
            return null;
        }
        try {
            return json.treeToValue(sent, kind.fields());
        } catch (JacksonException unreadable) {
            var error = UnreadableJson.explain(unreadable);
            // a wrong id has been told
            if (!error.pointer().equals("/id")) {
                inputs.refuse(error.pointer(), error.code(), error.found(), error.accepted());
            }
            return null;
        }
    }

    private static @Nullable ScanKind kind(JsonNode given) {
        return Arrays.stream(ScanKind.values())
                .filter(kind -> given.isString() && kind.name().equals(given.stringValue())).findFirst().orElse(null);
    }

    private static Map<String, WhichContainer> marks(ScanLine line, Inputs inputs) {
        var marks = new HashMap<String, WhichContainer>();
        var named = line.containers();
        if (named.isEmpty()) {
            inputs.refuse(ScanLine.OUT, "MISSING", null, "the container taken away, or the one left, or both");
        }
        named.forEach((pointer, container) -> {
            var read = container.marks(pointer + "/", inputs);
            if (read != null) {
                marks.put(pointer, read);
            }
        });
        return marks;
    }

    /** Whatever the order of its fields, it is the same line. */
    private byte[] content(JsonNode sent) {
        var fields = new TreeMap<String, JsonNode>();
        sent.properties().forEach(field -> fields.put(field.getKey(), field.getValue()));
        return Sha256.of(json.writeValueAsBytes(sent.isObject() ? fields : sent));
    }
}
