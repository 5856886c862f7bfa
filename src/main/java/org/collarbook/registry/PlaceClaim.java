package org.collarbook.registry;

import java.time.Instant;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * One of several places that claim a container: the recorded one since it was moved there, another since it was first
 * seen there.
 */
public record PlaceClaim(ClaimingSite site, boolean recorded, Instant since) {

    public record ClaimingSite(UUID id, String code, String name, @Nullable String address) {}
}
