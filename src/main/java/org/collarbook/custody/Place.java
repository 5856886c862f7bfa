package org.collarbook.custody;

import java.time.ZoneId;
import java.util.UUID;

import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;

/** A site as others see it; "today" at it is the date in its zone. */
public record Place(UUID siteId, int version, String code, String name, SiteKind kind, @Nullable UUID customerId,
        @Nullable String address, @Nullable Coordinates coordinates, ZoneId zone, Jurisdiction jurisdiction) {}
