package org.collarbook.holds;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Recalls by makers and authorities. While one runs, whatever matches it is held: what is registered, and what comes. */
@Component
public class Recalls {

    private final JdbcClient jdbc;
    private final RecallMatches matches;
    private final Clock clock;

    Recalls(JdbcClient jdbc, RecallMatches matches, Clock clock) {
        this.jdbc = jdbc;
        this.matches = matches;
        this.clock = clock;
    }

    /** Records it and holds the first that match; {@link RecallSweep} holds the rest once this is committed. */
    @Transactional
    public Recall record(NewRecall found, Caller by) {
        var id = Ids.next();
        var serials = found.serials();
        jdbc.sql("""
                insert into recall (id, maker, lot, specification, serial_first, serial_last, serial_prefix,
                    manufactured_first, manufactured_last, issued_by, reference, occurred_at, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(id, found.maker().value(), found.lot(), text(found.specification()),
                        serials == null ? null : serials.first().value(),
                        serials == null ? null : serials.last().value(), serials == null ? null : serials.prefix(),
                        day(found.manufacturedFirst()), day(found.manufacturedLast()), found.issuedBy(),
                        found.reference(), found.occurredAt().atOffset(ZoneOffset.UTC), now(), by.id())
                .update();
        jdbc.sql("insert into recall_sweep (recall_id) values (?)").param(id).update();
        matches.place(matches.lockFree(id, RecallSweep.FIRST, RecallSweep.CHUNK));
        return find(id).orElseThrow();
    }

    private static @Nullable String text(@Nullable Specification specification) {
        return specification == null ? null : specification.toString();
    }

    private static @Nullable LocalDate day(@Nullable YearMonth month) {
        return month == null ? null : month.atDay(1);
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    /** The holds stay until each is lifted. Refuses by problem a recall that has ended. */
    @Transactional
    public Recall end(Recall recall, String reason, Caller by) {
        int ended = jdbc.sql("""
                insert into recall_end (recall_id, reason, occurred_at, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?) on conflict (recall_id) do nothing""")
                .params(recall.id(), reason, now(), now(), by.id()).update();
        if (ended == 0) {
            throw Problem.conflict("RECALL_ENDED", "This recall has ended already. Nothing was stored.").asException();
        }
        return find(recall.id()).orElseThrow();
    }

    public boolean areRunning() {
        return matches.isAnyRunning();
    }

    /**
     * Holds those of the containers that a running recall matches; for whoever registers containers or corrects their
     * marks, in the same transaction.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void holdMatching(Collection<UUID> containers) {
        if (!containers.isEmpty() && matches.isAnyRunning()) {
            matches.place(matches.lock(List.copyOf(containers)));
        }
    }

    public Optional<Recall> find(UUID id) {
        return jdbc.sql(RecallRows.SELECT + "where r.id = ?").param(id).query(RecallRows::read).optional();
    }

    /** The latest first. */
    public List<Recall> page(@Nullable UUID before, PageSize size) {
        return jdbc.sql(RecallRows.SELECT + """
                where r.id < coalesce(:before::uuid, 'ffffffff-ffff-ffff-ffff-ffffffffffff')
                order by r.id desc limit :most""").param("before", before).param("most", size.limit())
                .query(RecallRows::read).list();
    }
}
