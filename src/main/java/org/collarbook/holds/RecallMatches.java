package org.collarbook.holds;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;

import org.collarbook.platform.Ids;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Which containers a recall concerns, and the holds that it places on them. */
@Component
class RecallMatches {

    /** Each true, false, or null where a mark is not known or cannot be compared; so is all of it. */
    static final String MAKER = "(c.maker = r.maker)";
    /** A dual mark matches by either half. Where one begins with the other, as without its pressure, nobody knows. */
    static final String SPECIFICATION = """
            (r.specification is null or case
                when string_to_array(c.specification, '/') && string_to_array(r.specification, '/') then true
                when exists (select from unnest(string_to_array(c.specification, '/')) own,
                        unnest(string_to_array(r.specification, '/')) told
                    where starts_with(own, told) or starts_with(told, own)) then null
                else false end)""";
    static final String SERIAL = """
            (r.serial_first is null or case
                when length(c.serial) = length(r.serial_first)
                    and left(c.serial, r.serial_prefix) = left(r.serial_first, r.serial_prefix)
                    and substr(c.serial, r.serial_prefix + 1) ~ '^[0-9]*$'
                then (c.serial collate "C") between (r.serial_first collate "C") and (r.serial_last collate "C") end)""";
    static final String MANUFACTURED = "((r.manufactured_first is null or c.manufactured >= r.manufactured_first)"
            + " and (r.manufactured_last is null or c.manufactured <= r.manufactured_last))";
    static final String ALL = "(" + MAKER + " and " + MANUFACTURED + " and " + SERIAL + " and " + SPECIFICATION + ")";

    private static final String UNHELD = """
            select c.id as container, r.id as recall from recall r join container c on %s
            where not exists (select from recall_end e where e.recall_id = r.id)
              and not exists (select from hold h where h.container_id = c.id and h.recall_id = r.id)
              -- nor on a record that was merged into this one, nor on one that is closed
              and not exists (select from refiled x join hold h on h.id = x.fact_id
                where x.container_id = c.id and h.recall_id = r.id)
              and not exists (select from absorbed a where a.container_id = c.id)
            """.formatted(ALL);

    private static final String PLACE = """
            insert into hold (id, container_id, reason, note, recall_id, occurred_at, recorded_at, recorded_by)
            select k.id, k.container, 'RECALLED', 'Recall ' || coalesce(r.reference || ' ', '') || 'by ' || r.issued_by
                || coalesce(', lot ' || r.lot, ''), r.id, r.occurred_at, :now, r.recorded_by
            from unnest(:ids::uuid[], :containers::uuid[], :recalls::uuid[]) as k (id, container, recall)
            join recall r on r.id = k.recall
            on conflict on constraint hold_recall_once do nothing
            returning container_id, occurred_at""";

    record Match(UUID container, UUID recall) {}

    private record Placed(UUID containerId, Instant occurredAt) {}

    private final JdbcClient jdbc;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    RecallMatches(JdbcClient jdbc, ApplicationEventPublisher events, Clock clock) {
        this.jdbc = jdbc;
        this.events = events;
        this.clock = clock;
    }

    boolean isAnyRunning() {
        return jdbc.sql("select exists (select from recall r where not exists"
                + " (select from recall_end e where e.recall_id = r.id))").query(Boolean.class).single();
    }

    /** Of these containers, held until the transaction ends. */
    List<Match> lock(List<UUID> ids) {
        return jdbc.sql(UNHELD + "and c.id = any (?) order by c.id for no key update of c")
                .param(ids.toArray(UUID[]::new)).query(Match.class).list();
    }

    /**
     * The next that the recall has not held yet, held until the transaction ends. What somebody else holds is passed over:
     * to wait for it with others in hand could stop both for good.
     */
    List<Match> lockFree(UUID recall, UUID after, int atMost) {
        return jdbc.sql(UNHELD + "and r.id = ? and c.id > ? order by c.id limit ? for no key update of c skip locked")
                .params(recall, after, atMost).query(Match.class).list();
    }

    /** The next of all that the recall has not held yet. */
    List<Match> unheld(UUID recall, UUID after, int atMost) {
        return jdbc.sql(UNHELD + "and r.id = ? and c.id > ? order by c.id limit ?").params(recall, after, atMost)
                .query(Match.class).list();
    }

    void place(List<Match> matches) {
        if (matches.isEmpty()) {
            return;
        }
        var placed = jdbc.sql(PLACE).param("now", clock.instant().atOffset(ZoneOffset.UTC))
                .param("ids", Stream.generate(Ids::next).limit(matches.size()).toArray(UUID[]::new))
                .param("containers", matches.stream().map(Match::container).toArray(UUID[]::new))
                .param("recalls", matches.stream().map(Match::recall).toArray(UUID[]::new))
                .query(Placed.class).list();
        if (!placed.isEmpty()) {
            events.publishEvent(new HoldsPlaced(placed.stream().map(Placed::containerId).distinct().toList(),
                    placed.stream().map(Placed::occurredAt).min(Comparator.naturalOrder()).orElseThrow()));
        }
    }
}
