package org.collarbook.custody.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;

import org.collarbook.custody.ReadingSource;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Moments;
import org.collarbook.registry.Tag;
import org.collarbook.regulation.ParseResult;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A tank by its id or its tag. */
@Schema(requiredProperties = {"percent", "takenAt", "source"})
record ReadingRequest(@Nullable UUID containerId, @Nullable String tag, @Nullable BigDecimal percent,
        @Nullable Instant takenAt, @Schema(implementation = ReadingSource.class) @Nullable String source) {

    private static final BigDecimal MOST = BigDecimal.valueOf(100);
    private static final int FINEST = 2;

    /** A reading with nothing missing. */
    record Told(UUID container, BigDecimal percent, Instant at, ReadingSource source) {}

    Told read(Instant now, Function<Tag, Optional<UUID>> byTag) {
        var inputs = new Inputs();
        var which = which(byTag, inputs);
        var shown = percent(inputs);
        var at = Moments.past("/takenAt", takenAt, now, inputs);
        var by = inputs.present("/source", source, "READ_BY_PERSON or TELEMETRY") == null
                ? null
                : inputs.word("/source", source, ReadingSource.class);
        inputs.done();
        if (which == null || shown == null || at == null || by == null) {
            throw new IllegalStateException("a reading was neither read nor refused");
        }
        return new Told(which, shown, at.isAfter(now) ? now : at, by);
    }

    private @Nullable BigDecimal percent(Inputs inputs) {
        var given = inputs.present("/percent", percent, "0 to 100");
        if (given != null && (given.signum() < 0 || given.compareTo(MOST) > 0
                || given.stripTrailingZeros().scale() > FINEST)) {
            inputs.refuse("/percent", "OUT_OF_RANGE", given.toString(), "0 to 100, with two decimals at most");
            return null;
        }
        return given;
    }

    private @Nullable UUID which(Function<Tag, Optional<UUID>> byTag, Inputs inputs) {
        if (containerId != null) {
            if (tag != null) {
                inputs.refuse("/tag", "TOO_MANY", tag, "one of containerId and tag");
            }
            return containerId;
        }
        var text = inputs.required("/tag", tag, Tag.LONGEST);
        if (text == null) {
            return null;
        }
        return switch (Tag.tryParse(text)) {
            case ParseResult.Parsed<Tag> read -> byTag.apply(read.value()).orElseGet(() -> {
                inputs.refuse("/tag", "UNKNOWN_CONTAINER", text, "a tag that a container bears, or a containerId");
                return null;
            });
            case ParseResult.Rejected<Tag> refused -> {
                inputs.refuse("/tag", "INVALID_TAG", text, refused.expected());
                yield null;
            }
        };
    }
}
