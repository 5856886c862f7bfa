package org.collarbook.portal;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.PortalSession;
import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.LoadedRuleBook;
import org.collarbook.compliance.Requirements;
import org.collarbook.platform.PageSize;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/**
 * What changed for a customer since an earlier answer. A transaction that the earlier snapshot did not see has changed
 * something since, however late it ended; and where the day at a site is another now, each container there is told on both
 * days and compared.
 */
@Component
class PortalChanges {

    private static final String UNSEEN = " >= pg_snapshot_xmin(cast(:snapshot as pg_snapshot))"
            + " and not pg_visible_in_snapshot(%1$s, cast(:snapshot as pg_snapshot))";
    private static final String NEXT = " and container_id > :after order by container_id limit :limit)";

    /** Each branch gives its first ones by id, once each, so the first of all are among them. */
    private static final String CANDIDATES = "with renamed as materialized (select id from site_change where changed_by"
            + UNSEEN.formatted("changed_by") + """
            ), turned as materialized (select id from site where :all
                or (cast(:now as timestamptz) at time zone zone)::date
                    <> (cast(:taken as timestamptz) at time zone zone)::date)
            select id, bool_or(touched) as touched from (
              (select container_id as id, true as touched from clock where decisive and changed_by"""
            + UNSEEN.formatted("changed_by") + NEXT + """

              union all
              (select distinct container_id, true from departure where gone_by""" + UNSEEN.formatted("gone_by") + NEXT
            + """

              union all
              (select container_id, true from clock where decisive and site_id in (select id from renamed)""" + NEXT
            + """

              union all
              (select container_id, :all from clock where decisive and site_id in (select id from turned)""" + NEXT
            + """
            ) every group by id order by id limit :limit""";

    private final PortalSession session;
    private final JdbcClient jdbc;
    private final KnownContainers containers;
    private final Requirements requirements;
    private final RuleBook rules;
    private final LoadedRuleBook loaded;
    private final Clock clock;

    PortalChanges(PortalSession session, JdbcClient jdbc, KnownContainers containers, Requirements requirements,
            RuleBook rules, LoadedRuleBook loaded, Clock clock) {
        this.session = session;
        this.jdbc = jdbc;
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
        this.loaded = loaded;
        this.clock = clock;
    }

    /** {@code last}: where the next page begins; null on the last one. */
    record Changed(List<PortalContainer> items, List<UUID> removed, @Nullable UUID last, Since since) {}

    private record Candidate(UUID id, boolean touched) {}

    /** A page may hold fewer than asked for, or none, and still have a next. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Changed since(CustomerScope scope, CustomerId customer, Since before, @Nullable UUID after, PageSize size) {
        session.confine(scope, customer);
        var now = new Since(snapshot(before), clock.instant(), loaded.id());
        var read = candidates(before, now, after, size);
        var page = read.size() > size.rows() ? read.subList(0, size.rows()) : read;
        var ids = page.stream().map(Candidate::id).toList();
        var lasts = Lasts.read(jdbc, ids);
        var known = containers.byIds(ids).stream().collect(Collectors.toMap(KnownContainer::id, Function.identity()));
        var items = new ArrayList<PortalContainer>();
        for (var candidate : page) {
            var one = known.get(candidate.id);
            if (one != null) {
                addChanged(one, lasts, candidate.touched, before, items);
            }
        }
        return new Changed(items, ids.stream().filter(id -> !known.containsKey(id)).toList(),
                read.size() > size.rows() ? ids.getLast() : null, now);
    }

    private void addChanged(KnownContainer one, Map<UUID, Lasts> lasts, boolean touched, Since before,
            List<PortalContainer> items) {
        var last = lasts.getOrDefault(one.id(), Lasts.NONE);
        var today = told(one, requirements.today(one), last);
        if (touched || !today.equals(told(one, dayOf(before, one), last))) {
            items.add(today);
        }
    }

    private PortalContainer told(KnownContainer one, LocalDate day, Lasts last) {
        return PortalContainer.from(one, rules.assess(one.facts(), day), last);
    }

    private static LocalDate dayOf(Since before, KnownContainer one) {
        var where = one.where();
        return LocalDate.ofInstant(before.takenAt(), where == null ? ZoneOffset.UTC : where.zone());
    }

    /** Refuses by problem one of a database that was further on than this one: it was restored since. */
    private String snapshot(Since before) {
        return jdbc.sql("select pg_current_snapshot()::text where pg_snapshot_xmax(cast(? as pg_snapshot))"
                + " <= pg_snapshot_xmax(pg_current_snapshot())").param(before.snapshot()).query(String.class)
                .optional().orElseThrow(() -> SinceTokens.startOver().asException());
    }

    private List<Candidate> candidates(Since before, Since now, @Nullable UUID after, PageSize size) {
        return jdbc.sql(CANDIDATES).param("snapshot", before.snapshot())
                .param("all", before.ruleBook() != now.ruleBook())
                .param("now", now.takenAt().atOffset(ZoneOffset.UTC))
                .param("taken", before.takenAt().atOffset(ZoneOffset.UTC))
                .param("after", after == null ? new UUID(0, 0) : after).param("limit", size.limit())
                .query((row, number) -> new Candidate(row.getObject("id", UUID.class), row.getBoolean("touched")))
                .list();
    }
}
