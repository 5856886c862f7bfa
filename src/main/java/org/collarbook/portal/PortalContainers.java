package org.collarbook.portal;

import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.PortalSession;
import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.LoadedRuleBook;
import org.collarbook.compliance.Requirements;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/** Reads a customer's containers, as the portal and in one snapshot: a range of an index, and three statements for its facts. */
@Component
class PortalContainers {

    private static final String DUE = " and (select min(d.due) from clock d where d.container_id = k.container_id)";

    private final PortalSession session;
    private final JdbcClient jdbc;
    private final KnownContainers containers;
    private final Requirements requirements;
    private final RuleBook rules;
    private final LoadedRuleBook loaded;
    private final Clock clock;
    private final Instant started;

    PortalContainers(PortalSession session, JdbcClient jdbc, KnownContainers containers, Requirements requirements,
            RuleBook rules, LoadedRuleBook loaded, Clock clock) {
        this.session = session;
        this.jdbc = jdbc;
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
        this.loaded = loaded;
        this.clock = clock;
        this.started = clock.instant();
    }

    /** {@code since} tells what had been seen when it was read. */
    record Listed(List<PortalContainer> read, Since since) {}

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Listed page(CustomerScope scope, CustomerId customer, PortalFilter filter, @Nullable UUID after,
            PageSize size) {
        session.confine(scope, customer);
        var snapshot = jdbc.sql("select pg_current_snapshot()::text").query(String.class).single();
        // before any day is asked for: one that begins meanwhile is told as a change
        var since = new Since(snapshot, clock.instant(), loaded.id());
        return new Listed(told(ids(filter, after, size)), since);
    }

    private List<UUID> ids(PortalFilter filter, @Nullable UUID after, PageSize size) {
        var site = filter.site() == null ? null : site(filter.site());
        var from = filter.dueFrom();
        var to = filter.dueTo();
        return jdbc.sql("select k.container_id from clock k join site s on s.id = k.site_id"
                + " where k.decisive and k.container_id > :after"
                + (site == null ? "" : " and k.site_id = :site")
                + (filter.status() == null
                        ? ""
                        : " and status_word(k.standing, k.due, k.filled_in_time, k.changes_on, k.changes_to,"
                                + " (cast(:now as timestamptz) at time zone s.zone)::date) = :status")
                + (from == null ? "" : DUE + " >= :from") + (to == null ? "" : DUE + " <= :to")
                + " order by k.container_id limit :limit")
                .param("after", after == null ? new UUID(0, 0) : after).param("site", site)
                .param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .param("status", filter.status() == null ? null : filter.status().name())
                .param("from", from == null ? null : from.atDay(1)).param("to", to == null ? null : to.atDay(1))
                .param("limit", size.limit()).query(UUID.class).list();
    }

    private UUID site(String named) {
        return jdbc.sql("select id from site where code = ? or id::text = lower(?)").params(named, named)
                .query(UUID.class).optional().orElseThrow(() -> Problem.invalid("site", "UNKNOWN_SITE", named,
                        "the id or code of one of the customer's sites").asException());
    }

    private List<PortalContainer> told(List<UUID> ids) {
        var lasts = Lasts.read(jdbc, ids);
        return containers.byIds(ids).stream().map(known -> told(known, lasts.getOrDefault(known.id(), Lasts.NONE)))
                .toList();
    }

    private PortalContainer told(KnownContainer known, Lasts lasts) {
        return PortalContainer.from(known, rules.assess(known.facts(), requirements.today(known)), lasts);
    }

    /** {@code lastModified}: no later change is known of; null where that cannot be said to the second. */
    record Single(PortalContainer container, @Nullable Instant lastModified) {}

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Single one(CustomerScope scope, CustomerId customer, UUID id) {
        session.confine(scope, customer);
        var known = containers.byId(id).orElseThrow(() -> Problem.notFound("container").asException());
        var lasts = Lasts.read(jdbc, List.of(id)).getOrDefault(id, Lasts.NONE);
        var changed = jdbc.sql("select changed_at from clock where container_id = ? and decisive").param(id)
                .query(OffsetDateTime.class).optional();
        return new Single(told(known, lasts), changed.map(at -> lastModified(known, at.toInstant())).orElse(null));
    }

    /** The facts, the day at its site, and the rules, which are those of this start of the service. */
    private @Nullable Instant lastModified(KnownContainer known, Instant changed) {
        var where = known.where();
        if (where == null) {
            return null;
        }
        var latest = requirements.today(known).atStartOfDay(where.zone()).toInstant();
        for (var at : List.of(changed, started)) {
            latest = at.isAfter(latest) ? at : latest;
        }
        // a second that is not over may see another change
        return latest.isBefore(clock.instant().minusSeconds(1)) ? latest : null;
    }
}
