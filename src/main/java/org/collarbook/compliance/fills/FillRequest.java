package org.collarbook.compliance.fills;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.UUID;
import java.util.stream.Stream;

import org.collarbook.compliance.fillcheck.WhichContainer;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Moments;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * A fill as seen at the scale or the meter. What was in it afterwards is told in one of three ways: {@code grossLb} on
 * the scale (less the recorded tare), {@code netAfterLb}, or {@code gallonsAdded} on top of {@code heelLb}.
 */
@Schema(requiredProperties = {"filledAt", "lookedAt"})
public record FillRequest(@Nullable UUID containerId, @Nullable String tag, @Nullable String serial,
        @Nullable String specification, @Nullable String maker, @Nullable Instant filledAt, @Nullable String product,
        @Nullable BigDecimal specificGravity, @Nullable BigDecimal grossLb, @Nullable BigDecimal netAfterLb,
        @Nullable BigDecimal gallonsAdded, @Nullable BigDecimal heelLb, @Nullable BigDecimal liquidTemperatureF,
        @Nullable Boolean lookedAt, @Nullable Boolean leakChecked,
        @Nullable Boolean leakFound, @Nullable String filledBy, @Nullable Boolean observedOverfill) {

    private static final BigDecimal MOST = BigDecimal.valueOf(1_000_000);
    private static final int MOST_DECIMALS = 3;

    /** Refuses by problem what is wrong with the request whatever container is meant. */
    FillCommand toCommand(Instant now) {
        var inputs = new Inputs();
        if (!Boolean.TRUE.equals(lookedAt)) {
            inputs.refuse("/lookedAt", lookedAt == null ? "MISSING" : "NOT_LOOKED_AT",
                    lookedAt == null ? null : lookedAt.toString(),
                    "true: it is looked at before each fill, 49 CFR 173.301(a)(2)");
        }
        return command(now, inputs);
    }

    /** The same of one that has happened: that nobody looked at the container before is told, not refused. */
    public FillCommand toldAfterwards(Instant now) {
        return command(now, new Inputs());
    }

    private FillCommand command(Instant now, Inputs inputs) {
        var which = which(inputs);
        var at = Moments.past("/filledAt", filledAt, now, inputs);
        var measure = measure(inputs);
        if (leakFound != null && !Boolean.TRUE.equals(leakChecked)) {
            inputs.refuse("/leakFound", "NOT_CHECKED", leakFound.toString(), "absent where leakChecked is not true");
        }
        var filler = inputs.optional("/filledBy", filledBy, 100);
        inputs.done();
        if (at == null || measure == null) {
            throw new IllegalStateException("a fill was neither read nor refused");
        }
        return new FillCommand(containerId, which, at, product, specificGravity, liquidTemperatureF, measure,
                lookedAt, leakChecked, leakFound, filler, Boolean.TRUE.equals(observedOverfill));
    }

    private @Nullable WhichContainer which(Inputs inputs) {
        boolean marked = Stream.of(tag, serial).anyMatch(text -> text != null && !text.isBlank());
        if (containerId == null) {
            return WhichContainer.read("/", tag, serial, specification, maker, inputs);
        }
        if (marked) {
            inputs.refuse("/containerId", "TOO_MANY", containerId.toString(), "one of containerId, tag and serial");
        }
        return null;
    }

    private @Nullable Measure measure(Inputs inputs) {
        var gross = positive("/grossLb", grossLb, "lb", inputs);
        var net = positive("/netAfterLb", netAfterLb, "lb", inputs);
        var gallons = positive("/gallonsAdded", gallonsAdded, "gallons", inputs);
        var heel = heelLb == null ? null : bounded("/heelLb", heelLb, BigDecimal.ZERO, "lb", inputs);
        long told = Stream.of(grossLb, netAfterLb, gallonsAdded).filter(given -> given != null).count();
        if (told != 1) {
            inputs.refuse("/grossLb", told == 0 ? "MISSING" : "TOO_MANY", told == 0 ? null : told + " ways",
                    "one of grossLb, netAfterLb and gallonsAdded");
            return null;
        }
        if (gallonsAdded != null && heelLb == null) {
            inputs.refuse("/heelLb", "MISSING", null, "what was in it before, in lb; 0 when it was empty");
        }
        if (net != null && heel != null && heel.compareTo(net) > 0) {
            inputs.refuse("/heelLb", "OUT_OF_RANGE", heel.toString(), "not more than netAfterLb, " + net);
        }
        return gross != null
                ? new Measure.Weighed(gross, heel)
                : net != null
                        ? new Measure.Stated(net, heel)
                        : gallons != null && heel != null ? new Measure.Metered(gallons, heel) : null;
    }

    private static @Nullable BigDecimal positive(String pointer, @Nullable BigDecimal given, String unit,
            Inputs inputs) {
        return given == null ? null : bounded(pointer, given, new BigDecimal("0.001"), unit, inputs);
    }

    private static @Nullable BigDecimal bounded(String pointer, BigDecimal given, BigDecimal least, String unit,
            Inputs inputs) {
        // the scale first: a number such as 1e999999999 is not to be written out
        if (Math.abs((long) given.scale()) > 20 || given.compareTo(least) < 0 || given.compareTo(MOST) > 0
                || given.stripTrailingZeros().scale() > MOST_DECIMALS) {
            inputs.refuse(pointer, "OUT_OF_RANGE", given.toString(), "from " + least + " to " + MOST + " " + unit
                    + ", at most " + MOST_DECIMALS + " decimals");
            return null;
        }
        return given;
    }
}
