package org.collarbook.intake.scans;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.UUID;

import org.collarbook.compliance.fills.FillRequest;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * A line as read by the device: its own id, when it happened, the container by {@code containerId}, {@code tag} or
 * {@code serial} (with {@code specification} and {@code maker} as far as read), and the fields of its kind.
 */
@Schema(oneOf = {ScanLine.Moved.class, ScanLine.Returned.class, ScanLine.Filled.class, ScanLine.Held.class})
sealed interface ScanLine {

    @Nullable
    Instant occurredAt();

    @Nullable
    UUID containerId();

    @Nullable
    String tag();

    @Nullable
    String serial();

    @Nullable
    String specification();

    @Nullable
    String maker();

    @Schema(name = "MovementLine")
    record Moved(@Nullable String id, @Nullable ScanKind kind, @Nullable Instant occurredAt,
            @Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
            @Nullable String specification, @Nullable String maker, @Nullable UUID toSite, @Nullable UUID fromSite)
            implements ScanLine {}

    /** It came back to a site; {@code empty} also records that it was found empty, {@code how} as whoever saw it says. */
    @Schema(name = "ReturnLine")
    record Returned(@Nullable String id, @Nullable ScanKind kind, @Nullable Instant occurredAt,
            @Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
            @Nullable String specification, @Nullable String maker, @Nullable UUID toSite, @Nullable Boolean empty,
            @Nullable String how) implements ScanLine {

        boolean isEmpty() {
            return Boolean.TRUE.equals(empty);
        }
    }

    @Schema(name = "FillLine")
    record Filled(@Nullable String id, @Nullable ScanKind kind, @Nullable Instant occurredAt,
            @Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
            @Nullable String specification, @Nullable String maker, @Nullable String product,
            @Nullable BigDecimal specificGravity, @Nullable BigDecimal grossLb, @Nullable BigDecimal netAfterLb,
            @Nullable BigDecimal gallonsAdded, @Nullable BigDecimal heelLb,
            @Nullable BigDecimal liquidTemperatureF, @Nullable Boolean lookedAt, @Nullable Boolean leakChecked,
            @Nullable Boolean leakFound, @Nullable String filledBy, @Nullable Boolean observedOverfill)
            implements ScanLine {

        /** The same fill of a container that has been found. */
        FillRequest of(UUID container) {
            return new FillRequest(container, null, null, null, null, occurredAt, product, specificGravity, grossLb,
                    netAfterLb, gallonsAdded, heelLb, liquidTemperatureF, lookedAt, leakChecked,
                    leakFound, filledBy, observedOverfill);
        }
    }

    @Schema(name = "HoldLine")
    record Held(@Nullable String id, @Nullable ScanKind kind, @Nullable Instant occurredAt,
            @Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
            @Nullable String specification, @Nullable String maker, @Nullable String reason, @Nullable String note)
            implements ScanLine {}
}
