package org.collarbook.compliance.fills;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.custody.FillChecks;
import org.collarbook.platform.Caution;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;

/**
 * A recorded fill; {@code holdId} is the hold that an observed overfill has placed, {@code leakHoldId} that of a leak.
 * {@code told} is what is to be said of it beside: a check that is not recorded, a filler without training in force.
 */
record FillAnswer(UUID id, UUID containerId, Instant filledAt, LocalDate filledOn, @Nullable BigDecimal netAfterLb,
        @Nullable BigDecimal grossLb, @Nullable BigDecimal tareLb, @Nullable BigDecimal heelLb,
        @Nullable BigDecimal addedLb, @Nullable BigDecimal gallonsAdded, @Nullable BigDecimal liquidTemperatureF,
        @Nullable String product, @Nullable BigDecimal specificGravity, @Nullable BigDecimal maxNetLb,
        boolean lookedAt, @Nullable Boolean leakChecked, @Nullable Boolean leakFound, @Nullable String filledBy,
        boolean observedOverfill, List<ReasonCode> refusedFor, List<Reason> told, FillChecks checks,
        @Nullable UUID holdId, @Nullable UUID leakHoldId, String caution) {

    static FillAnswer from(RecordFill.Recorded recorded) {
        var fill = recorded.fill();
        var contents = fill.contents();
        return new FillAnswer(fill.id(), fill.containerId(), fill.filledAt(), fill.filledOn(), contents.netLb(),
                contents.grossLb(), contents.tareLb(), contents.heelLb(), contents.addedLb(), contents.gallonsAdded(),
                contents.liquidTemperatureF(), recorded.product(), fill.specificGravity(), fill.mostNetLb(),
                Boolean.TRUE.equals(fill.lookedAt()), fill.leakChecked(), fill.leakFound(), fill.filledBy(),
                fill.observedOverfill(), fill.refusedFor(), recorded.told(), FillChecks.STAND, recorded.hold(),
                recorded.leakHold(),
                Caution.TEXT);
    }
}
