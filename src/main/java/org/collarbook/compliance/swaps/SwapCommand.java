package org.collarbook.compliance.swaps;

import java.time.Instant;
import java.util.UUID;

import org.collarbook.custody.Place;
import org.jspecify.annotations.Nullable;

/**
 * At the site one container was taken onto the vehicle and another one left from it, or one of the two. With
 * {@code happened} it is recorded whatever the rules say of the one that was left.
 */
public record SwapCommand(Place site, Place vehicle, @Nullable UUID out, @Nullable UUID in, Instant at,
        boolean happened) {}
