package org.collarbook.intake;

import java.time.ZoneId;
import java.util.UUID;

import org.collarbook.custody.Coordinates;
import org.collarbook.custody.SiteKind;
import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;

/** A site of the register, or one that the ledger opens; that one has no id yet. */
record KnownSite(@Nullable UUID id, String code, String name, SiteKind kind, @Nullable KnownCustomer customer,
        @Nullable Coordinates coordinates, ZoneId zone, Jurisdiction jurisdiction, @Nullable String address) {

    /** The same of a customer. */
    record KnownCustomer(@Nullable UUID id, String code, String name) {}
}
