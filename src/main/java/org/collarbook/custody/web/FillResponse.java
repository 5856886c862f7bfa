package org.collarbook.custody.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.custody.FillChecks;
import org.collarbook.custody.FillFlag;
import org.collarbook.custody.PastFill;
import org.collarbook.regulation.Reason;
import org.jspecify.annotations.Nullable;

/**
 * {@code netAfterLb} is what was in it after the fill; what the fill of a ledger did not tell is absent. {@code flags} are
 * what became known of it later, the latest first; {@code flagged} when by that it was not allowed.
 */
public record FillResponse(UUID id, UUID containerId, LocalDate filledOn, @Nullable Instant filledAt,
        @Nullable BigDecimal netAfterLb, @Nullable BigDecimal grossLb, @Nullable BigDecimal tareLb,
        @Nullable BigDecimal heelLb, @Nullable BigDecimal addedLb, @Nullable BigDecimal gallonsAdded,
        @Nullable BigDecimal liquidTemperatureF, @Nullable String product, @Nullable BigDecimal specificGravity,
        @Nullable BigDecimal maxNetLb, @Nullable Boolean lookedAt, @Nullable Boolean leakChecked,
        @Nullable Boolean leakFound, @Nullable String filledBy, boolean observedOverfill, boolean toldAfterwards,
        List<String> refusedFor, @Nullable UUID siteId, @Nullable String ruleBook, FillChecks checks,
        Instant recordedAt, boolean flagged, List<Flag> flags) {

    /** With no reasons, the fill was allowed after all. */
    public record Flag(Instant recordedAt, List<Reason> reasons) {}

    public static FillResponse from(PastFill fill, List<FillFlag> flags) {
        return new FillResponse(fill.id(), fill.containerId(), fill.filledOn(), fill.filledAt(), fill.netLb(),
                fill.grossLb(), fill.tareLb(), fill.heelLb(), fill.addedLb(), fill.gallonsAdded(),
                fill.liquidTemperatureF(), fill.product(), fill.specificGravity(), fill.mostNetLb(), fill.lookedAt(),
                fill.leakChecked(), fill.leakFound(), fill.filledBy(), fill.observedOverfill(), fill.toldAfterwards(),
                fill.refusedFor(), fill.siteId(), fill.ruleBook(), FillChecks.STAND, fill.recordedAt(),
                !flags.isEmpty() && !flags.getFirst().reasons().isEmpty(),
                flags.stream().map(flag -> new Flag(flag.recordedAt(), flag.reasons())).toList());
    }
}
