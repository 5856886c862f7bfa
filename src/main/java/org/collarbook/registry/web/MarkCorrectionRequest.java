package org.collarbook.registry.web;

import java.util.List;
import java.util.Map;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** The marks as they are read now, each as stamped; null: it cannot be read after all. What is absent stays. */
@Schema(requiredProperties = {"marks", "reason"})
record MarkCorrectionRequest(@Nullable Map<String, @Nullable String> marks, @Nullable String reason) {

    private static final List<String> NAMES = List.of("kind", "specification", "maker", "serial", "manufactured",
            "waterCapacity", "tare", "servicePressure");

    record Read(Map<String, @Nullable String> marks, String reason) {}

    Read read() {
        var inputs = new Inputs();
        var why = inputs.required("/reason", reason, 1000);
        var names = "one or more of " + String.join(", ", NAMES);
        if (marks == null || marks.isEmpty()) {
            inputs.refuse("/marks", "MISSING", null, names);
        } else {
            marks.keySet().stream().filter(name -> !NAMES.contains(name)).limit(NAMES.size())
                    .forEach(name -> inputs.refuse("/marks", "UNKNOWN_FIELD", name, names));
        }
        inputs.done();
        if (marks == null || why == null) {
            throw new IllegalStateException("marks and a reason were neither read nor refused");
        }
        return new Read(marks, why);
    }
}
