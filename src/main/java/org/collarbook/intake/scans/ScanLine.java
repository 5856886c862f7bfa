package org.collarbook.intake.scans;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;

import org.collarbook.compliance.fills.FillRequest;
import org.collarbook.compliance.swaps.NamedContainer;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.DiscriminatorMapping;
import io.swagger.v3.oas.annotations.media.Schema;

/**
 * A line as read by the device: its own id, when it happened, the container by {@code containerId}, {@code tag} or
 * {@code serial} (with {@code specification} and {@code maker} as far as read), and the fields of its kind.
 */
@Schema(oneOf = {ScanLine.Moved.class, ScanLine.Returned.class, ScanLine.Filled.class, ScanLine.Held.class,
        ScanLine.Seen.class, ScanLine.Swapped.class}, discriminatorProperty = "kind", discriminatorMapping = {
                @DiscriminatorMapping(value = "MOVEMENT", schema = ScanLine.Moved.class),
                @DiscriminatorMapping(value = "RETURN", schema = ScanLine.Returned.class),
                @DiscriminatorMapping(value = "FILL", schema = ScanLine.Filled.class),
                @DiscriminatorMapping(value = "HOLD", schema = ScanLine.Held.class),
                @DiscriminatorMapping(value = "SEEN", schema = ScanLine.Seen.class),
                @DiscriminatorMapping(value = "SWAP", schema = ScanLine.Swapped.class)})
sealed interface ScanLine {

    /** What the pointers to the one container of a line begin with. */
    String ITSELF = "";
    String OUT = "/out";
    String IN = "/in";

    @Nullable
    Instant occurredAt();

    /** The containers that it names, by the pointer to each. */
    Map<String, NamedContainer> containers();

    /** A line about one container. */
    sealed interface OfOne extends ScanLine {

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

        @Override
        default Map<String, NamedContainer> containers() {
            return Map.of(ITSELF, new NamedContainer(containerId(), tag(), serial(), specification(), maker()));
        }
    }

    @Schema(name = "MovementLine")
    record Moved(@Nullable String id, @Schema(requiredMode = Schema.RequiredMode.REQUIRED) @Nullable ScanKind kind,
            @Nullable Instant occurredAt,
            @Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
            @Nullable String specification, @Nullable String maker, @Nullable UUID toSite, @Nullable UUID fromSite)
            implements OfOne {}

    /** It came back to a site; {@code empty} also records that it was found empty, {@code how} as whoever saw it says. */
    @Schema(name = "ReturnLine")
    record Returned(@Nullable String id, @Schema(requiredMode = Schema.RequiredMode.REQUIRED) @Nullable ScanKind kind,
            @Nullable Instant occurredAt,
            @Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
            @Nullable String specification, @Nullable String maker, @Nullable UUID toSite, @Nullable Boolean empty,
            @Nullable String how) implements OfOne {

        boolean isEmpty() {
            return Boolean.TRUE.equals(empty);
        }
    }

    @Schema(name = "FillLine")
    record Filled(@Nullable String id, @Schema(requiredMode = Schema.RequiredMode.REQUIRED) @Nullable ScanKind kind,
            @Nullable Instant occurredAt,
            @Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
            @Nullable String specification, @Nullable String maker, @Nullable String product,
            @Nullable BigDecimal specificGravity, @Nullable BigDecimal grossLb, @Nullable BigDecimal netAfterLb,
            @Nullable BigDecimal gallonsAdded, @Nullable BigDecimal heelLb,
            @Nullable BigDecimal liquidTemperatureF, @Nullable Boolean lookedAt, @Nullable Boolean leakChecked,
            @Nullable Boolean leakFound, @Nullable String filledBy, @Nullable Boolean observedOverfill)
            implements OfOne {

        /** The same fill of a container that has been found. */
        FillRequest of(UUID container) {
            return new FillRequest(container, null, null, null, null, occurredAt, product, specificGravity, grossLb,
                    netAfterLb, gallonsAdded, heelLb, liquidTemperatureF, lookedAt, leakChecked,
                    leakFound, filledBy, observedOverfill);
        }
    }

    @Schema(name = "HoldLine")
    record Held(@Nullable String id, @Schema(requiredMode = Schema.RequiredMode.REQUIRED) @Nullable ScanKind kind,
            @Nullable Instant occurredAt,
            @Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
            @Nullable String specification, @Nullable String maker, @Nullable String reason, @Nullable String note)
            implements OfOne {}

    /** It stood there, as at a stock count. */
    @Schema(name = "SeenLine")
    record Seen(@Nullable String id, @Schema(requiredMode = Schema.RequiredMode.REQUIRED) @Nullable ScanKind kind,
            @Nullable Instant occurredAt,
            @Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
            @Nullable String specification, @Nullable String maker, @Nullable UUID site) implements OfOne {}

    /** Taken away, and left in its place; one of the two may be absent. */
    @Schema(name = "SwapLine")
    record Swapped(@Nullable String id, @Schema(requiredMode = Schema.RequiredMode.REQUIRED) @Nullable ScanKind kind,
            @Nullable Instant occurredAt, @Nullable UUID site,
            @Nullable UUID vehicle, @Nullable NamedContainer out, @Nullable NamedContainer in) implements ScanLine {

        @Override
        public Map<String, NamedContainer> containers() {
            var named = new HashMap<String, NamedContainer>();
            if (out != null) {
                named.put(OUT, out);
            }
            if (in != null) {
                named.put(IN, in);
            }
            return named;
        }
    }
}
