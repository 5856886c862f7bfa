package org.collarbook.access;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.StoredMoment;
import org.jspecify.annotations.Nullable;

/** What is known of a key once it has been shown. */
record Issued(UUID id, String name, String prefix, List<String> roles, @Nullable UUID customerId,
        @Nullable List<UUID> sites, Instant createdAt, @Nullable UUID createdBy, @Nullable Instant expiresAt,
        @Nullable Instant revokedAt, @Nullable Instant lastUsedAt, @Nullable UUID replacedBy) {

    static final String COLUMNS = "id, name, prefix, roles, customer_id, sites, created_at, created_by, expires_at,"
            + " revoked_at, last_used_at, replaced_by";

    static Issued read(ResultSet row, int number) throws SQLException {
        var sites = row.getArray("sites");
        return new Issued(row.getObject("id", UUID.class), row.getString("name"), row.getString("prefix"),
                Arrays.asList((String[]) row.getArray("roles").getArray()), row.getObject("customer_id", UUID.class),
                sites == null ? null : List.of((UUID[]) sites.getArray()),
                StoredMoment.of(row, "created_at"), row.getObject("created_by", UUID.class),
                StoredMoment.orNull(row, "expires_at"), StoredMoment.orNull(row, "revoked_at"),
                StoredMoment.orNull(row, "last_used_at"),
                row.getObject("replaced_by", UUID.class));
    }

    Caller caller() {
        var scope = customerId == null
                ? CustomerScope.EVERYONE
                : new CustomerScope.Only(new CustomerId(customerId), sites == null ? null : Set.copyOf(sites));
        return new Caller(id, name, ownRoles(), scope);
    }

    boolean isValidAt(Instant now) {
        return revokedAt == null && (expiresAt == null || expiresAt.isAfter(now));
    }

    /** What a key that follows it opens: the same, for as long from now on as this one was made for. */
    KeyGrant renewed(Instant now) {
        return new KeyGrant(name, ownRoles(), customerId, sites == null ? null : Set.copyOf(sites),
                expiresAt == null ? null : now.plus(Duration.between(createdAt, expiresAt)));
    }

    private Set<Role> ownRoles() {
        return roles.stream().map(Role::of).flatMap(Optional::stream).collect(Collectors.toUnmodifiableSet());
    }
}
