package org.collarbook.holds;

import java.time.Clock;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.List;
import java.util.UUID;

import org.collarbook.inspection.RequalificationRecorded;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * A passed requalification lifts what it may, in the transaction that records it. A mark bears no day, so the one just
 * recorded counts for what was held before it, when its month is not an earlier one than the hold's. What a ledger brings
 * lifts nothing: it tells of work that was done before anybody knows when.
 */
@Component
class LiftByRequalification {

    private record Done(UUID id, LocalDate month, @Nullable Method method, Result result, UUID recordedBy,
            ContainerKind kind) {}

    private final JdbcClient jdbc;
    private final Holds holds;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    LiftByRequalification(JdbcClient jdbc, Holds holds, ApplicationEventPublisher events, Clock clock) {
        this.jdbc = jdbc;
        this.holds = holds;
        this.events = events;
        this.clock = clock;
    }

    @EventListener
    void on(RequalificationRecorded event) {
        var container = event.containerId();
        var standing = holds.standing(List.of(container)).getOrDefault(container, List.of());
        if (standing.isEmpty()) {
            return;
        }
        var done = latest(container);
        var lifted = standing.stream().filter(hold -> isLifted(hold, done)).toList();
        lifted.forEach(hold -> lift(hold, done));
        if (!lifted.isEmpty()) {
            events.publishEvent(new HoldsLifted(List.of(container)));
        }
    }

    private Done latest(UUID container) {
        return jdbc.sql("""
                select q.id, q.month, q.method, q.result, q.recorded_by, c.kind
                from requalification q join container c on c.id = q.container_id
                where q.container_id = ? order by q.recorded_at desc, q.id desc limit 1""").param(container)
                .query(Done.class).single();
    }

    private static boolean isLifted(Hold hold, Done done) {
        var method = done.method;
        return done.result == Result.PASSED && method != null && hold.reason().isLiftedBy(method)
                && hold.reason().liftedBy(done.kind).contains(LiftedBy.REQUALIFICATION)
                && !YearMonth.from(done.month).isBefore(YearMonth.from(hold.occurredAt().atOffset(ZoneOffset.UTC)));
    }

    private void lift(Hold hold, Done done) {
        OffsetDateTime now = clock.instant().atOffset(ZoneOffset.UTC);
        jdbc.sql("""
                insert into hold_lift (hold_id, lifted_by, requalification_id, occurred_at, recorded_at, recorded_by)
                values (?, 'REQUALIFICATION', ?, ?, ?, ?)""").params(hold.id(), done.id, now, now, done.recordedBy)
                .update();
    }
}
