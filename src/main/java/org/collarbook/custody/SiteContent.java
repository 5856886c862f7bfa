package org.collarbook.custody;

import java.time.ZoneId;
import java.util.UUID;

import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;

/** A site as it is to stand; a customer's site names its customer, no other does. */
public record SiteContent(String code, String name, SiteKind kind, @Nullable UUID customerId,
        @Nullable String address, @Nullable Coordinates coordinates, ZoneId zone, Jurisdiction jurisdiction) {

    public SiteContent {
        if ((kind == SiteKind.CUSTOMER) != (customerId != null)) {
            throw new IllegalArgumentException("site " + code + ": expected a customer for a customer's site only");
        }
    }
}
