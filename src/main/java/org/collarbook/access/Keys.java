package org.collarbook.access;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.Ids;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The keys that open the service. */
@Component
class Keys {

    private static final Duration LAST_USED_STEP = Duration.ofMinutes(1);

    /** What is known of a key once it has been shown. */
    record Issued(UUID id, String name, String prefix, List<String> roles, @Nullable UUID customerId,
            Instant createdAt, @Nullable Instant expiresAt, @Nullable Instant revokedAt,
            @Nullable Instant lastUsedAt) {}

    private static final String COLUMNS = "id, name, prefix, roles, customer_id, created_at, expires_at, revoked_at, last_used_at";

    private final JdbcClient jdbc;
    private final Clock clock;

    Keys(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    Optional<Caller> callerOf(ApiKey key) {
        var now = clock.instant();
        var found = jdbc.sql("select " + COLUMNS + " from api_key"
                + " where hash = ? and revoked_at is null and (expires_at is null or expires_at > ?)")
                .params(key.hash(), at(now)).query((row, n) -> issued(row)).optional();
        found.filter(used -> used.lastUsedAt() == null || used.lastUsedAt().isBefore(now.minus(LAST_USED_STEP)))
                .ifPresent(used -> jdbc.sql("update api_key set last_used_at = ? where id = ?")
                        .params(at(now), used.id()).update());
        return found.map(Keys::caller);
    }

    private static Caller caller(Issued key) {
        Set<Role> roles = key.roles().stream().map(word -> Role.valueOf(word.toUpperCase(Locale.ROOT)))
                .collect(Collectors.toUnmodifiableSet());
        var scope = key.customerId() == null
                ? CustomerScope.EVERYONE
                : new CustomerScope.Only(new CustomerId(key.customerId()));
        return new Caller(key.id(), key.name(), roles, scope);
    }

    List<Issued> all() {
        return jdbc.sql("select " + COLUMNS + " from api_key order by created_at, id").query((row, n) -> issued(row))
                .list();
    }

    @Transactional
    UUID issue(ApiKey key, String name, Set<Role> roles, @Nullable UUID customer, @Nullable Instant expires,
            @Nullable UUID issuedBy) {
        var id = Ids.next();
        jdbc.sql("""
                insert into api_key (id, name, prefix, hash, roles, customer_id, created_at, created_by, expires_at)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(id, name, key.prefix(), key.hash(), roles.stream().map(Role::word).toArray(String[]::new),
                        customer, at(clock.instant()), issuedBy, expires == null ? null : at(expires))
                .update();
        return id;
    }

    void revoke(UUID id) {
        if (jdbc.sql("update api_key set revoked_at = coalesce(revoked_at, ?) where id = ?")
                .params(at(clock.instant()), id).update() == 0) {
            throw Problem.notFound("key").asException();
        }
    }

    /** True for one caller only, however many instances start at once on an empty database. */
    @Transactional
    boolean issueFirst(ApiKey key) {
        jdbc.sql("select pg_advisory_xact_lock(hashtext('first key'))").query(String.class).optional();
        if (jdbc.sql("select exists (select from api_key)").query(Boolean.class).single()) {
            return false;
        }
        issue(key, "first administrator", Set.of(Role.ADMINISTRATOR), null, null, null);
        return true;
    }

    private static Issued issued(ResultSet row) throws SQLException {
        return new Issued(row.getObject("id", UUID.class), row.getString("name"), row.getString("prefix"),
                Arrays.asList((String[]) row.getArray("roles").getArray()), row.getObject("customer_id", UUID.class),
                row.getObject("created_at", OffsetDateTime.class).toInstant(), instant(row, "expires_at"),
                instant(row, "revoked_at"), instant(row, "last_used_at"));
    }

    private static @Nullable Instant instant(ResultSet row, String column) throws SQLException {
        var at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }

    private static OffsetDateTime at(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }
}
