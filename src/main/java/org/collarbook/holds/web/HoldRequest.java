package org.collarbook.holds.web;

import java.time.Instant;

import org.collarbook.holds.HoldReason;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Moments;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** Why a container is to be held; {@code occurredAt} is now when absent. */
@Schema(requiredProperties = "reason")
record HoldRequest(@Nullable String reason, @Nullable String note, @Nullable Instant occurredAt) {

    record Read(HoldReason reason, @Nullable String note, Instant occurredAt) {}

    Read read(Instant now) {
        var inputs = new Inputs();
        var given = reason == null || reason.isBlank() ? null : reason;
        var why = inputs.word("/reason", inputs.present("/reason", given, "a code of GET /api/holds/reasons"),
                HoldReason.class);
        var said = inputs.optional("/note", note, 1000);
        var at = Moments.pastOrNow("/occurredAt", occurredAt, now, inputs);
        inputs.done();
        if (why == null) {
            throw new IllegalStateException("a reason was neither read nor refused");
        }
        return new Read(why, said, at);
    }
}
