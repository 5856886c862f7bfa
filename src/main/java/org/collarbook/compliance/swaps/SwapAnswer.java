package org.collarbook.compliance.swaps;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.collarbook.regulation.Reason;
import org.jspecify.annotations.Nullable;

/**
 * {@code allowed} is false where the container that was left must not be used at the site, for the {@code reasons};
 * {@code told} is what is to be said beside, and refuses nothing.
 */
public record SwapAnswer(UUID id, UUID site, UUID vehicle, Instant occurredAt, RecordSwap.@Nullable Moved out,
        RecordSwap.@Nullable Moved in, boolean allowed, List<Reason> reasons, List<Reason> told) {

    public static SwapAnswer from(RecordSwap.Recorded recorded) {
        var swap = recorded.swap();
        return new SwapAnswer(recorded.id(), swap.site().siteId(), swap.vehicle().siteId(), swap.at(), recorded.out(),
                recorded.in(), recorded.refusals().isEmpty(), recorded.refusals(), recorded.told());
    }
}
