package org.collarbook.custody;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;

/**
 * A fill as measured, with what it was judged by: {@code mostNetLb} is the limit at that time, {@code refusedFor} why it
 * would have been refused had it not been observed as an overfill, or told after it had happened.
 */
public record MeasuredFill(UUID id, UUID containerId, Instant filledAt, LocalDate filledOn, Contents contents,
        @Nullable UUID productId, @Nullable BigDecimal specificGravity, @Nullable BigDecimal mostNetLb,
        @Nullable Boolean lookedAt, @Nullable Boolean leakChecked, @Nullable Boolean leakFound,
        @Nullable String filledBy, boolean observedOverfill, boolean toldAfterwards, List<ReasonCode> refusedFor,
        @Nullable UUID siteId, int ruleBook) {

    public MeasuredFill {
        refusedFor = List.copyOf(refusedFor);
    }
}
