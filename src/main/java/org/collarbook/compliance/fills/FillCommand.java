package org.collarbook.compliance.fills;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.UUID;

import org.collarbook.compliance.fillcheck.WhichContainer;
import org.jspecify.annotations.Nullable;

/** A fill to be judged and recorded; the container is named by {@code id}, or else by {@code which}. */
public record FillCommand(@Nullable UUID id, @Nullable WhichContainer which, Instant filledAt, @Nullable String product,
        @Nullable BigDecimal specificGravity, @Nullable BigDecimal temperatureF, Measure measure,
        @Nullable Boolean lookedAt, @Nullable Boolean leakChecked, @Nullable Boolean leakFound,
        @Nullable String filledBy, boolean observedOverfill) {}
