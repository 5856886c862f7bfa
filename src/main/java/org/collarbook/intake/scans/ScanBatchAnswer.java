package org.collarbook.intake.scans;

import java.util.Arrays;
import java.util.List;
import java.util.UUID;

import org.collarbook.intake.scans.LineAnswer.Outcome;

import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import tools.jackson.databind.JsonNode;

/** What became of each line, in the order in which they were sent; {@code id} is the batch's here. */
record ScanBatchAnswer(UUID id, String batchId, LineCounts counts,
        @ArraySchema(schema = @Schema(implementation = LineAnswer.class)) List<JsonNode> lines) {

    record LineCounts(long lines, long recorded, long recordedNotAllowed, long repeated, long refused) {}

    static ScanBatchAnswer of(UUID id, String batchId, List<JsonNode> lines) {
        var counts = new long[Outcome.values().length];
        lines.forEach(line -> counts[Outcome.valueOf(line.get("outcome").stringValue()).ordinal()]++);
        return new ScanBatchAnswer(id, batchId, new LineCounts(Arrays.stream(counts).sum(),
                counts[Outcome.RECORDED.ordinal()], counts[Outcome.RECORDED_NOT_ALLOWED.ordinal()],
                counts[Outcome.REPEATED.ordinal()], counts[Outcome.REFUSED.ordinal()]), lines);
    }

    boolean replays() {
        return counts.repeated == counts.lines;
    }
}
