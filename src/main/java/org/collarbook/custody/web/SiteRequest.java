package org.collarbook.custody.web;

import java.time.ZoneId;
import java.util.Locale;
import java.util.UUID;
import java.util.function.Predicate;

import org.collarbook.custody.Coordinates;
import org.collarbook.custody.SiteContent;
import org.collarbook.custody.SiteKind;
import org.collarbook.platform.Inputs;
import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

@Schema(requiredProperties = {"code", "name", "kind", "zone", "jurisdiction"})
record SiteRequest(@Nullable String code, @Nullable String name, @Nullable String kind, @Nullable UUID customerId,
        @Nullable String address, @Nullable Double latitude, @Nullable Double longitude, @Nullable String zone,
        @Nullable String jurisdiction) {

    SiteContent toContent(Predicate<UUID> isCustomer) {
        var inputs = new Inputs();
        var readCode = inputs.required("/code", code, 40);
        var readName = inputs.required("/name", name, 200);
        var givenKind = kind == null || kind.isBlank() ? null : kind;
        var readKind = inputs.word("/kind", inputs.present("/kind", givenKind,
                "CUSTOMER, DEPOT, VEHICLE or REQUALIFIER"), SiteKind.class);
        customer(inputs, readKind, isCustomer);
        var readAddress = inputs.optional("/address", address, 400);
        var coordinates = coordinates(inputs);
        var readZone = zone(inputs);
        var readJurisdiction = jurisdiction(inputs);
        inputs.done();
        if (readCode == null || readName == null || readKind == null || readZone == null
                || readJurisdiction == null) {
            throw new IllegalStateException("a site was neither read nor refused");
        }
        return new SiteContent(readCode, readName, readKind, customerId, readAddress, coordinates, readZone,
                readJurisdiction);
    }

    private void customer(Inputs inputs, @Nullable SiteKind readKind, Predicate<UUID> isCustomer) {
        if (readKind == SiteKind.CUSTOMER && customerId == null) {
            inputs.refuse("/customerId", "MISSING", null, "the customer whose site it is");
        } else if (readKind != null && readKind != SiteKind.CUSTOMER && customerId != null) {
            inputs.refuse("/customerId", "NOT_ALLOWED", customerId.toString(), "a customer for a CUSTOMER site only");
        } else if (customerId != null && !isCustomer.test(customerId)) {
            inputs.refuse("/customerId", "UNKNOWN_CUSTOMER", customerId.toString(), "the id of a customer");
        }
    }

    private @Nullable Coordinates coordinates(Inputs inputs) {
        if (latitude == null && longitude == null) {
            return null;
        }
        if (latitude == null || longitude == null) {
            inputs.refuse(latitude == null ? "/latitude" : "/longitude", "MISSING", null,
                    "latitude and longitude, or neither");
            return null;
        }
        boolean north = within("/latitude", latitude, 90, inputs);
        boolean east = within("/longitude", longitude, 180, inputs);
        return north && east ? new Coordinates(latitude, longitude) : null;
    }

    private static boolean within(String pointer, double degrees, int most, Inputs inputs) {
        boolean within = Math.abs(degrees) <= most;
        if (!within) {
            inputs.refuse(pointer, "OUT_OF_RANGE", String.valueOf(degrees), "-" + most + " to " + most + " degrees");
        }
        return within;
    }

    /** A place's own zone by its IANA name; a bare offset would be wrong for half the year. */
    private @Nullable ZoneId zone(Inputs inputs) {
        var named = inputs.required("/zone", zone, 60);
        if (named == null) {
            return null;
        }
        if (ZoneId.getAvailableZoneIds().contains(named)) {
            return ZoneId.of(named);
        }
        inputs.refuse("/zone", "UNKNOWN_ZONE", zone, "an IANA time zone such as America/Chicago");
        return null;
    }

    private @Nullable Jurisdiction jurisdiction(Inputs inputs) {
        var given = inputs.required("/jurisdiction", jurisdiction, 8);
        if (given == null) {
            return null;
        }
        var upper = given.toUpperCase(Locale.ROOT);
        if (!Jurisdiction.isWellFormed(upper)) {
            inputs.refuse("/jurisdiction", "INVALID_JURISDICTION", jurisdiction, "a code such as US or CA-BC");
            return null;
        }
        return new Jurisdiction(upper);
    }
}
