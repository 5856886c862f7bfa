package org.collarbook.custody;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.Ids;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The fire extinguishers that stand at sites, and what was done to each. */
@Component
public class Extinguishers {

    private final JdbcClient jdbc;
    private final Clock clock;

    Extinguishers(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** Refuses by problem a label that another extinguisher at the site bears. */
    @Transactional
    public StandingExtinguisher add(NewExtinguisher found, Caller by) {
        var id = Ids.next();
        try {
            jdbc.sql("""
                    insert into extinguisher (id, site_id, label, type, rating_bc, manufactured, recorded_at,
                        recorded_by)
                    values (?, ?, ?, ?, ?, ?, ?, ?)""")
                    .params(id, found.siteId(), found.label(), found.type() == null ? null : found.type().name(),
                            found.ratingBC(), found.manufactured() == null ? null : found.manufactured().atDay(1),
                            now(), by.id())
                    .update();
        } catch (DuplicateKeyException taken) {
            throw Problem.conflict("LABEL_TAKEN", "Another extinguisher at this site is labelled " + found.label()
                    + ": choose another label, or remove that one first.").asException();
        }
        return find(found.siteId(), id).orElseThrow();
    }

    /** Refuses by problem what is recorded already, and an extinguisher that is gone. */
    @Transactional
    public StandingExtinguisher record(StandingExtinguisher at, YearMonth month, Method method, String doneBy,
            Caller by) {
        lock(at.id());
        if (find(at.about().siteId(), at.id()).orElseThrow().removedAt() != null) {
            throw Problem.conflict("EXTINGUISHER_REMOVED", "Extinguisher " + at.about().label()
                    + " was removed from the site. Nothing was stored: record it anew if it is back.").asException();
        }
        int stored = jdbc.sql("""
                insert into extinguisher_record (id, extinguisher_id, month, method, done_by, recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?) on conflict on constraint extinguisher_record_once do nothing""")
                .params(Ids.next(), at.id(), month.atDay(1), method.name(), doneBy,
                        now(), by.id())
                .update();
        if (stored == 0) {
            throw Problem.conflict("ALREADY_RECORDED", "This extinguisher already has " + method + " in " + month
                    + ". Nothing was stored.").asException();
        }
        return find(at.about().siteId(), at.id()).orElseThrow();
    }

    /** So that a record and a removal do not pass each other. */
    private void lock(UUID id) {
        jdbc.sql("select id from extinguisher where id = ? for update").param(id).query(UUID.class).single();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    /** Its history stays; what is gone already stays as it is. */
    @Transactional
    public void remove(StandingExtinguisher gone, Caller by) {
        lock(gone.id());
        jdbc.sql("update extinguisher set removed_at = ?, removed_by = ? where id = ? and removed_at is null")
                .params(now(), by.id(), gone.id()).update();
    }

    /** Standing or gone. */
    public Optional<StandingExtinguisher> find(UUID site, UUID id) {
        return jdbc.sql(ExtinguisherRows.SELECT + "where e.site_id = ? and e.id = ?").params(site, id)
                .query(ExtinguisherRows::read).optional();
    }

    public List<StandingExtinguisher> standingAt(UUID site) {
        return jdbc.sql(ExtinguisherRows.SELECT + "where e.site_id = ? and e.removed_at is null order by e.id")
                .param(site).query(ExtinguisherRows::read).list();
    }

    public List<StandingExtinguisher> at(UUID site, boolean withRemoved, @Nullable UUID after, PageSize size) {
        return jdbc.sql(ExtinguisherRows.SELECT + """
                where e.site_id = :site and (:removed or e.removed_at is null)
                  and e.id > coalesce(cast(:after as uuid), '00000000-0000-0000-0000-000000000000')
                order by e.id limit :most""").param("site", site).param("removed", withRemoved)
                .param("after", after).param("most", size.limit()).query(ExtinguisherRows::read).list();
    }
}
