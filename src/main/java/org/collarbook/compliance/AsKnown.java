package org.collarbook.compliance;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** A container as the register knew it at a time, with the rules that the register then held. */
@Component
public class AsKnown {

    /** An act {@code a} as of then. */
    private static final String IN_FORCE = """
            a.recorded_at <= :known and not exists (select from identity_act_undo u
                where u.act_id = a.id and u.recorded_at <= :known)""";
    /** A fact {@code f} was recorded by then, and then counted for the container. */
    private static final String COUNTED = """
            f.recorded_at <= :known
                and (f.container_id = :id or f.id in (select fact_id from identity_act_fact where into_id = :id))
                and coalesce((select m.into_id from identity_act_fact m join identity_act a on a.id = m.act_id
                    where m.fact_id = f.id and %s order by a.number desc limit 1), f.container_id) = :id"""
            .formatted(IN_FORCE);

    /**
     * The same statement reads what was known then: each table that it names stands here for those of its rows that were
     * recorded by that time and had happened by that day; the container is the version of its chain that then was the
     * last.
     */
    private static final String THEN = """
            with container as (
              select version.* from (
                select content::jsonb as content from journal
                where container_id = :id and kind in ('REGISTERED', 'RECORDED_ANEW') and recorded_at <= :known
                  and not exists (select from identity_act a where a.kind = 'MERGE' and a.from_id = :id and %2$s)
                order by seq desc limit 1) entry,
              lateral jsonb_populate_record(null::public.container, entry.content || jsonb_build_object('id', :id::text,
                'declared', (entry.content ->> 'declared')::jsonb)) version),
            filed_requalification as (
              select f.id, cast(:id as uuid) as container_id, f.month, f.method, f.star, f.plus, f.rin, f.rin_seen,
                f.result, f.performed_on
              from requalification f where %1$s),
            filed_fill as (
              select f.id, cast(:id as uuid) as container_id, f.filled_on, f.filled_at
              from fill f where %1$s and f.filled_on <= :day),
            placement as (
              select cast(:id as uuid) as container_id, f.to_site_id as site_id, f.id as movement_id,
                f.occurred_at as since from movement f
              where %1$s and f.occurred_at < :after
              order by f.occurred_at desc, f.recorded_at desc, f.id desc limit 1)
            """.formatted(COUNTED, IN_FORCE);

    private final JdbcClient jdbc;
    private final LoadedRuleBook loaded;
    private final RuleBook rules;
    private final Map<String, RuleBook> books = new ConcurrentHashMap<>();

    AsKnown(JdbcClient jdbc, LoadedRuleBook loaded, RuleBook rules) {
        this.jdbc = jdbc;
        this.loaded = loaded;
        this.rules = rules;
    }

    /** Nothing for a container that was not registered by then. */
    public Optional<KnownContainer> container(UUID id, LocalDate day, Instant knownAt) {
        return jdbc.sql(THEN + KnownContainers.SELECT).param("id", id).param("day", day)
                .param("known", knownAt.atOffset(ZoneOffset.UTC))
                // the day has ended everywhere on earth
                .param("after", day.plusDays(1).atStartOfDay().atOffset(ZoneOffset.ofHours(-12)))
                .query(KnownContainerRow::read).optional();
    }

    /** {@code evaluator} is the version that then answered; another one now answers from the same book. */
    public record Book(RuleBook rules, String evaluator) {}

    public Book book(Instant knownAt) {
        var then = loaded.at(knownAt);
        var book = then.hash().equals(rules.hash())
                ? rules
                : books.computeIfAbsent(then.hash(), _ -> RuleBookLoader.ofCanonicalText(then.content()));
        return new Book(book, then.engineVersion());
    }
}
