package org.collarbook.custody.web;

import java.time.Instant;
import java.util.UUID;
import java.util.function.Predicate;

import org.collarbook.custody.NewMovement;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Moments;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

@Schema(requiredProperties = {"containerId", "toSite", "occurredAt"})
record MovementRequest(@Nullable UUID containerId, @Nullable UUID toSite, @Nullable Instant occurredAt,
        @Nullable UUID fromSite) {

    NewMovement toMovement(Instant now, Predicate<UUID> isSite) {
        var inputs = new Inputs();
        var container = inputs.present("/containerId", containerId, "the id of a container");
        var to = inputs.present("/toSite", toSite, "the id of the site it went to");
        var at = Moments.past("/occurredAt", occurredAt, now, inputs);
        known("/toSite", to, isSite, inputs);
        known("/fromSite", fromSite, isSite, inputs);
        inputs.done();
        if (container == null || to == null || at == null) {
            throw new IllegalStateException("a movement was neither read nor refused");
        }
        return new NewMovement(container, to, at, fromSite);
    }

    private static void known(String pointer, @Nullable UUID site, Predicate<UUID> isSite, Inputs inputs) {
        if (site != null && !isSite.test(site)) {
            inputs.refuse(pointer, "UNKNOWN_SITE", site.toString(), "the id of a site");
        }
    }
}
