package org.collarbook.access;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The keys that open the service. */
@Component
class Keys {

    private static final Duration LAST_USED_STEP = Duration.ofMinutes(1);

    private final JdbcClient jdbc;
    private final Clock clock;

    Keys(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** One row by its index, each time: a key that is revoked opens nothing from that moment on, on any instance. */
    Optional<Caller> callerOf(ApiKey key) {
        var now = clock.instant();
        var found = jdbc.sql("select " + Issued.COLUMNS + " from api_key"
                + " where hash = ? and revoked_at is null and (expires_at is null or expires_at > ?)")
                .params(key.hash(), at(now)).query(Issued::read).optional();
        found.filter(used -> used.lastUsedAt() == null || used.lastUsedAt().isBefore(now.minus(LAST_USED_STEP)))
                .ifPresent(used -> jdbc.sql("update api_key set last_used_at = ? where id = ?")
                        .params(at(now), used.id()).update());
        return found.map(Issued::caller);
    }

    /** In the order in which they were issued. */
    List<Issued> page(@Nullable UUID after, PageSize size) {
        return jdbc.sql("select " + Issued.COLUMNS + " from api_key where id > ? order by id limit ?")
                .params(after == null ? new UUID(0, 0) : after, size.limit()).query(Issued::read).list();
    }

    @Transactional
    UUID issue(ApiKey key, KeyGrant grant, @Nullable UUID issuedBy) {
        var id = Ids.next();
        jdbc.sql("""
                insert into api_key (id, name, prefix, hash, roles, customer_id, sites, created_at, created_by,
                    expires_at)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(id, grant.name(), key.prefix(), key.hash(),
                        grant.roles().stream().map(Role::word).toArray(String[]::new), grant.customer(),
                        grant.sites() == null ? null : grant.sites().toArray(UUID[]::new), at(clock.instant()),
                        issuedBy, grant.expires() == null ? null : at(grant.expires()))
                .update();
        return id;
    }

    void revoke(UUID id) {
        if (jdbc.sql("update api_key set revoked_at = coalesce(revoked_at, ?) where id = ?")
                .params(at(clock.instant()), id).update() == 0) {
            throw Problem.notFound("key").asException();
        }
    }

    /** A new key that opens the same; the old one goes on for the overlap, and no longer than it would have. */
    @Transactional
    UUID rotate(UUID id, ApiKey fresh, Duration overlap, UUID rotatedBy) {
        var now = clock.instant();
        var old = jdbc.sql("select " + Issued.COLUMNS + " from api_key where id = ? for update").param(id)
                .query(Issued::read).optional().orElseThrow(() -> Problem.notFound("key").asException());
        if (old.replacedBy() != null) {
            throw Problem.conflict("KEY_REPLACED", "This key was replaced before: rotate the one that replaced it.")
                    .with("replacedBy", old.replacedBy()).asException();
        }
        if (!old.isValidAt(now)) {
            throw Problem.conflict("KEY_ENDED", "This key is revoked or has expired: issue a new one.").asException();
        }
        var replacement = issue(fresh, old.renewed(now), rotatedBy);
        jdbc.sql("update api_key set replaced_by = ?, expires_at = least(expires_at, ?) where id = ?")
                .params(replacement, at(now.plus(overlap)), id).update();
        return replacement;
    }

    /** True for one caller only, however many instances start at once on an empty database. */
    @Transactional
    boolean issueFirst(ApiKey key) {
        jdbc.sql("select pg_advisory_xact_lock(hashtext('first key'))").query(String.class).optional();
        if (jdbc.sql("select exists (select from api_key)").query(Boolean.class).single()) {
            return false;
        }
        issue(key, KeyGrant.administrator("first administrator"), null);
        return true;
    }

    private static OffsetDateTime at(Instant instant) {
        return instant.atOffset(ZoneOffset.UTC);
    }
}
