package org.collarbook.custody;

import java.util.List;
import java.util.UUID;

import org.collarbook.registry.PlaceClaim;
import org.jspecify.annotations.Nullable;

/** A container that several places claim: none of them is believed until somebody has looked. */
public record DisputedPlace(UUID containerId, String specification, @Nullable String maker, String serial, String size,
        @Nullable String tag, List<PlaceClaim> claims) {

    public DisputedPlace {
        claims = List.copyOf(claims);
    }
}
