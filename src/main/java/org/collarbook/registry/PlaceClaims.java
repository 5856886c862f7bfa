package org.collarbook.registry;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Whoever keeps the places tells which containers several of them claim. */
public interface PlaceClaims {

    /** Of those of the containers that are in dispute, the recorded place first. */
    Map<UUID, List<PlaceClaim>> of(Collection<UUID> containers);
}
