package org.collarbook.compliance.swaps;

import java.time.Instant;
import java.util.UUID;

import org.collarbook.compliance.fillcheck.WhichContainer;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Moments;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** {@code happened}: it is recorded as a fact, whatever the rules say of the container that was left. */
@Schema(requiredProperties = {"site", "vehicle", "out", "occurredAt"})
record SwapRequest(@Nullable UUID site, @Nullable UUID vehicle, @Nullable NamedContainer out,
        @Nullable NamedContainer in, @Nullable Instant occurredAt, @Nullable Boolean happened) {

    /** What was read; the marks are those of a container whose id was not told. */
    record Read(StopReader.Stop stop, @Nullable WhichContainer out, @Nullable WhichContainer in, Instant at) {}

    Read read(StopReader stops, Instant now) {
        var inputs = new Inputs();
        var at = Moments.past("/occurredAt", occurredAt, now, inputs);
        if (out == null && in == null) {
            inputs.refuse("/out", "MISSING", null, "the container taken away, or the one left, or both");
        }
        var taken = out == null ? null : out.marks("/out/", inputs);
        var left = in == null ? null : in.marks("/in/", inputs);
        var stop = stops.read(site, vehicle, inputs);
        if (at == null) {
            throw new IllegalStateException("a swap was neither read nor refused");
        }
        return new Read(stop, taken, left, at);
    }

    boolean isFact() {
        return Boolean.TRUE.equals(happened);
    }
}
