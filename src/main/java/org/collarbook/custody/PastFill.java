package org.collarbook.custody;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A fill as recorded; what the fill of a ledger did not tell is null. */
public record PastFill(UUID id, UUID containerId, LocalDate filledOn, @Nullable Instant filledAt,
        @Nullable BigDecimal netLb, @Nullable BigDecimal grossLb, @Nullable BigDecimal tareLb,
        @Nullable BigDecimal heelLb, @Nullable BigDecimal addedLb, @Nullable BigDecimal gallonsAdded,
        @Nullable BigDecimal liquidTemperatureF, @Nullable String product, @Nullable BigDecimal specificGravity,
        @Nullable BigDecimal mostNetLb, @Nullable Boolean lookedAt, @Nullable Boolean leakChecked,
        @Nullable Boolean leakFound, @Nullable String filledBy, boolean observedOverfill, boolean toldAfterwards,
        List<String> refusedFor, @Nullable UUID siteId, @Nullable String ruleBook,
        Instant recordedAt, UUID recordedBy) {

    public PastFill {
        refusedFor = List.copyOf(refusedFor);
    }
}
