package org.collarbook.access;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** What a key opens, and until when. */
record KeyGrant(String name, Set<Role> roles, @Nullable UUID customer, @Nullable Set<UUID> sites,
        @Nullable Instant expires) {

    static KeyGrant administrator(String name) {
        return new KeyGrant(name, Set.of(Role.ADMINISTRATOR), null, null, null);
    }
}
