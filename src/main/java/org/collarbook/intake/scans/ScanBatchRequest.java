package org.collarbook.intake.scans;

import java.util.List;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import tools.jackson.databind.JsonNode;

/** {@code batchId} is the sender's own name of the batch; each line is read by itself, so that one unreadable stops none. */
@Schema(requiredProperties = {"batchId", "lines"})
record ScanBatchRequest(@Nullable String batchId,
        @ArraySchema(schema = @Schema(implementation = ScanLine.class)) @Nullable List<JsonNode> lines) {

    static final int MOST_LINES = 10_000;
    static final int LONGEST_ID = 200;

    record Content(String name, List<JsonNode> lines) {}

    Content read() {
        var inputs = new Inputs();
        var name = inputs.required("/batchId", batchId, LONGEST_ID);
        var sent = inputs.present("/lines", lines, "1 to " + MOST_LINES + " lines");
        if (sent != null && sent.isEmpty()) {
            inputs.refuse("/lines", "TOO_FEW", "0 lines", "1 to " + MOST_LINES + " lines");
        } else if (sent != null && sent.size() > MOST_LINES) {
            inputs.refuse("/lines", "TOO_MANY", sent.size() + " lines",
                    "at most " + MOST_LINES + " lines: send the others in another batch");
        }
        inputs.done();
        if (name == null || sent == null) {
            throw new IllegalStateException("a batch was neither read nor refused");
        }
        return new Content(name, sent);
    }
}
