package org.collarbook.custody.web;

import java.time.Instant;
import java.util.UUID;
import java.util.function.Predicate;

import org.collarbook.platform.Inputs;
import org.collarbook.platform.Moments;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

@Schema(requiredProperties = {"containerId", "site", "occurredAt"})
record SightingRequest(@Nullable UUID containerId, @Nullable UUID site, @Nullable Instant occurredAt) {

    /** A sighting with nothing missing. */
    record Told(UUID container, UUID site, Instant at) {}

    Told read(Instant now, Predicate<UUID> isSite) {
        var inputs = new Inputs();
        var container = inputs.present("/containerId", containerId, "the id of a container");
        var where = inputs.present("/site", site, "the id of the site where it was seen");
        var at = Moments.past("/occurredAt", occurredAt, now, inputs);
        if (where != null && !isSite.test(where)) {
            inputs.refuse("/site", "UNKNOWN_SITE", where.toString(), "the id of a site");
        }
        inputs.done();
        if (container == null || where == null || at == null) {
            throw new IllegalStateException("a sighting was neither read nor refused");
        }
        return new Told(container, where, at);
    }
}
