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
                order by seq desc limit 1) entry,
              lateral jsonb_populate_record(null::public.container, entry.content || jsonb_build_object('id', :id::text,
                'declared', (entry.content ->> 'declared')::jsonb)) version),
            filed_requalification as (
              select * from public.requalification where container_id = :id and recorded_at <= :known),
            filed_fill as (
              select * from public.fill where container_id = :id and recorded_at <= :known and filled_on <= :day),
            placement as (
              select container_id, to_site_id as site_id, id as movement_id, occurred_at as since from movement
              where container_id = :id and recorded_at <= :known and occurred_at < :after
              order by occurred_at desc, recorded_at desc, id desc limit 1)
            """;

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
