package org.collarbook.custody;

import java.time.Instant;
import java.time.ZoneId;
import java.util.UUID;

import org.collarbook.platform.Ids;
import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Version;

@Entity
@SuppressWarnings("NullAway.Init")
class Site implements Persistable<UUID> {

    @Id
    private UUID id;
    @Version
    private @Nullable Integer version;
    private String code;
    private String name;
    @Enumerated(EnumType.STRING)
    private SiteKind kind;
    private @Nullable UUID customerId;
    private @Nullable String address;
    private @Nullable Double latitude;
    private @Nullable Double longitude;
    private String zone;
    private String jurisdiction;
    private Instant createdAt;

    protected Site() {}

    static Site open(SiteContent content, Instant at) {
        var site = new Site();
        site.id = Ids.next();
        site.createdAt = at;
        site.describe(content);
        return site;
    }

    final void describe(SiteContent content) {
        code = content.code();
        name = content.name();
        kind = content.kind();
        customerId = content.customerId();
        address = content.address();
        latitude = content.coordinates() == null ? null : content.coordinates().latitude();
        longitude = content.coordinates() == null ? null : content.coordinates().longitude();
        zone = content.zone().getId();
        jurisdiction = content.jurisdiction().code();
    }

    Place place() {
        return new Place(id, version == null ? 0 : version, code, name, kind, customerId, address,
                latitude == null || longitude == null ? null : new Coordinates(latitude, longitude), ZoneId.of(zone),
                new Jurisdiction(jurisdiction));
    }

    @Override
    public UUID getId() {
        return id;
    }

    @Override
    public boolean isNew() {
        return version == null;
    }
}
