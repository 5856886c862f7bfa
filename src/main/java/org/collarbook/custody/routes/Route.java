package org.collarbook.custody.routes;

import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A route: the depot that it loads from, its vehicle (null is not told), its days, and its stops in their order. */
public record Route(UUID id, int version, String code, String name, UUID depot, @Nullable UUID vehicle,
        VisitPattern visits, List<UUID> stops) {}
