package org.collarbook.custody.web;

import java.util.UUID;

import org.collarbook.custody.Place;
import org.jspecify.annotations.Nullable;

public record SiteResponse(UUID id, int version, String code, String name, String kind, @Nullable UUID customerId,
        @Nullable String address, @Nullable Double latitude, @Nullable Double longitude, String zone,
        String jurisdiction) {

    public static SiteResponse from(Place site) {
        var coordinates = site.coordinates();
        return new SiteResponse(site.siteId(), site.version(), site.code(), site.name(), site.kind().name(),
                site.customerId(), site.address(), coordinates == null ? null : coordinates.latitude(),
                coordinates == null ? null : coordinates.longitude(), site.zone().getId(),
                site.jurisdiction().code());
    }
}
