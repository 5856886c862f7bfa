package org.collarbook.inspection;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.BulkCopy;
import org.collarbook.platform.Ids;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.collarbook.registry.Containers;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Completed inspections and tests of containers; facts, so appended and never changed. */
@Component
public class Requalifications {

    private final JdbcClient jdbc;
    private final BulkCopy copy;
    private final Containers containers;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Requalifications(JdbcClient jdbc, BulkCopy copy, Containers containers, ApplicationEventPublisher events,
            Clock clock) {
        this.jdbc = jdbc;
        this.copy = copy;
        this.containers = containers;
        this.events = events;
        this.clock = clock;
    }

    /** Refuses by problem a month in the future or before the original test, and one that is recorded already; nothing was written then. */
    @Transactional(noRollbackFor = ProblemException.class)
    public void append(RequalificationEntry entry, Caller by) {
        var id = entry.containerId();
        containers.lockKnown(id);
        containers.find(id).ifPresent(container -> refuseImpossible(container, entry.requalification().month()));
        if (recorded(entry, of(List.of(id))) > 0) {
            throw Problem.conflict("ALREADY_RECORDED", "This container already has a requalification in "
                    + entry.requalification().month() + " by this method, with this result. Nothing was stored.")
                    .asException();
        }
        // what was corrected away may be recorded once more
        write(List.of(entry), recorded(entry, read(List.of(id), "")), by.id());
        events.publishEvent(new RequalificationRecorded(id, entry.requalification().month().atDay(1)));
    }

    private static long recorded(RequalificationEntry entry, Map<UUID, List<Requalification>> known) {
        var id = entry.containerId();
        var test = Test.of(id, entry.requalification());
        return known.getOrDefault(id, List.of()).stream().filter(done -> Test.of(id, done).equals(test)).count();
    }

    private void refuseImpossible(RegisteredContainer container, YearMonth month) {
        var manufactured = container.marks().manufactured();
        if (manufactured != null && month.isBefore(manufactured.value())) {
            throw Problem.invalid("/month", "BEFORE_MANUFACTURE", month.toString(),
                    "not before the original test in " + manufactured.value()).asException();
        }
        // the widest date on earth: a site's own day is not known here
        if (month.isAfter(YearMonth.from(clock.instant().atOffset(ZoneOffset.ofHours(14))))) {
            throw Problem.invalid("/month", "IN_THE_FUTURE", month.toString(), "a month that has begun").asException();
        }
    }

    private record Test(UUID container, YearMonth month, @Nullable Method method, Result result, @Nullable Rin rin,
            @Nullable LocalDate day) {

        static Test of(UUID container, Requalification done) {
            return new Test(container, done.month(), done.method(), done.result(), done.rin(), null);
        }

        static Test of(RequalificationEntry entry) {
            var done = entry.requalification();
            return new Test(entry.containerId(), done.month(), done.method(), done.result(), done.rin(),
                    entry.performedOn());
        }
    }

    /** How many were new; one that is recorded already is left as it is. */
    @Transactional(propagation = Propagation.REQUIRED)
    public long insert(List<RequalificationEntry> entries, UUID by) {
        var known = new HashSet<Test>();
        everRecorded(entries.stream().map(RequalificationEntry::containerId).toList())
                .forEach((container, list) -> list.forEach(done -> {
                    known.add(Test.of(done));
                    // a mark tells no day, so it may be of this very test
                    known.add(Test.of(container, done.requalification()));
                }));
        var fresh = new ArrayList<RequalificationEntry>();
        for (var entry : entries) {
            if (known.add(Test.of(entry))) {
                fresh.add(entry);
            }
        }
        return write(fresh, 0, by);
    }

    private long write(List<RequalificationEntry> entries, long recordedBefore, UUID by) {
        OffsetDateTime now = clock.instant().atOffset(ZoneOffset.UTC);
        return copy.into("requalification (id, container_id, month, method, star, plus, rin, rin_seen, result,"
                + " as_stamped, declaration_id, performed_on, recorded_before, recorded_at, recorded_by)", entries,
                entry -> values(entry, recordedBefore, now, by));
    }

    private static @Nullable Object[] values(RequalificationEntry entry, long recordedBefore, OffsetDateTime now,
            UUID by) {
        var done = entry.requalification();
        return new @Nullable Object[]{Ids.next(), entry.containerId(), done.month().atDay(1), done.method(),
                done.star(), done.plus(), done.rin(), done.rinSeen(), done.result(), entry.asStamped(),
                entry.declaration(), entry.performedOn(), recordedBefore, now, by};
    }

    /** Of those of the containers that have any, the earliest first; what was corrected is not among them. */
    public Map<UUID, List<Requalification>> of(Collection<UUID> ids) {
        return read(ids, """
                and not exists (select from requalification_correction k where k.corrects = q.id)""");
    }

    /** The same with what was corrected: a ledger that still has the mistake does not bring it back. */
    public Map<UUID, List<RequalificationEntry>> everRecorded(Collection<UUID> ids) {
        var found = new HashMap<UUID, List<RequalificationEntry>>();
        jdbc.sql(
                """
                select container_id, month, method, star, plus, rin, rin_seen, result, as_stamped, declaration_id,
                    performed_on
                from filed_requalification where container_id = any (?) order by container_id, month, recorded_at, id""")
                .param(ids.toArray(UUID[]::new)).query(row -> {
                    var container = row.getObject(1, UUID.class);
                    found.computeIfAbsent(container, id -> new ArrayList<>()).add(new RequalificationEntry(container,
                            read(row), row.getString("as_stamped"), row.getObject("declaration_id", UUID.class),
                            row.getObject("performed_on", LocalDate.class)));
                });
        return found;
    }

    private Map<UUID, List<Requalification>> read(Collection<UUID> ids, String which) {
        var found = new HashMap<UUID, List<Requalification>>();
        jdbc.sql("""
                select container_id, month, method, star, plus, rin, rin_seen, result from filed_requalification q
                where container_id = any (?)\s""" + which + " order by container_id, month, recorded_at, id")
                .param(ids.toArray(UUID[]::new)).query(row -> {
                    found.computeIfAbsent(row.getObject(1, UUID.class), id -> new ArrayList<>()).add(read(row));
                });
        return found;
    }

    static Requalification read(ResultSet row) throws SQLException {
        var method = row.getString("method");
        var rin = row.getString("rin");
        return new Requalification(YearMonth.from(row.getObject("month", LocalDate.class)),
                method == null ? null : Method.valueOf(method), row.getBoolean("star"), row.getBoolean("plus"),
                rin == null ? null : new Rin(rin), row.getBoolean("rin_seen"),
                Result.valueOf(row.getString("result")));
    }
}
