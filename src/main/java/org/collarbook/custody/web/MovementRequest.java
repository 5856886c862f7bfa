package org.collarbook.custody.web;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import java.util.function.Predicate;

import org.collarbook.custody.NewMovement;
import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

record MovementRequest(@Nullable UUID containerId, @Nullable UUID toSite, @Nullable Instant occurredAt,
        @Nullable UUID fromSite) {

    /** A scanner's clock may run ahead by so much. */
    private static final Duration AHEAD = Duration.ofMinutes(5);
    private static final Instant EARLIEST = Instant.parse("1940-01-01T00:00:00Z");

    NewMovement toMovement(Instant now, Predicate<UUID> isSite) {
        var inputs = new Inputs();
        var container = inputs.present("/containerId", containerId, "the id of a container");
        var to = inputs.present("/toSite", toSite, "the id of the site it went to");
        var at = inputs.present("/occurredAt", occurredAt, "when it happened, such as 2026-11-25T14:30:00Z");
        if (at != null && at.isAfter(now.plus(AHEAD))) {
            inputs.refuse("/occurredAt", "IN_THE_FUTURE", at.toString(), "not after now, " + now);
        } else if (at != null && at.isBefore(EARLIEST)) {
            inputs.refuse("/occurredAt", "OUT_OF_RANGE", at.toString(), "not before " + EARLIEST);
        }
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
