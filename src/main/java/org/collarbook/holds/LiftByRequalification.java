package org.collarbook.holds;

import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.custody.Places;
import org.collarbook.holds.Lifting.Way;
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
 * A passed requalification lifts what it may, in the transaction that records it, when its day is a later one than the
 * hold's; of a mark, which bears no day, its month. A sheet tells no hour, so of a test of the hold's own day somebody says
 * that it came after, by naming it.
 * What a ledger brings lifts nothing: it tells of work that was done before anybody knows when.
 */
@Component
class LiftByRequalification {

    private record Done(UUID id, LocalDate month, @Nullable LocalDate performedOn, @Nullable Method method,
            Result result, UUID recordedBy, ContainerKind kind) {

        boolean isSurelyAfter(LocalDate held) {
            return performedOn == null
                    ? YearMonth.from(month).isAfter(YearMonth.from(held))
                    : performedOn.isAfter(held);
        }

        boolean isSurelyBefore(LocalDate held) {
            return performedOn == null
                    ? YearMonth.from(month).isBefore(YearMonth.from(held))
                    : performedOn.isBefore(held);
        }
    }

    /** Taken back is not done; one that lifted the hold and was found to be a mistake does not lift it again. */
    private static final String CANDIDATES = """
            select q.id, q.month, q.performed_on, q.method, q.result, q.recorded_by, c.kind
            from filed_requalification q join container c on c.id = q.container_id join hold h on h.id = :hold
            where q.container_id = :container
              and not exists (select from requalification_correction k where k.corrects = q.id)
              and not exists (select from hold_lift l where l.hold_id = h.id and l.requalification_id = q.id)
            """;

    private final JdbcClient jdbc;
    private final Holds holds;
    private final Places places;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    LiftByRequalification(JdbcClient jdbc, Holds holds, Places places, ApplicationEventPublisher events,
            Clock clock) {
        this.jdbc = jdbc;
        this.holds = holds;
        this.places = places;
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
        var zone = places.zoneOf(container);
        if (!standing.stream().filter(hold -> lift(hold, zone)).toList().isEmpty()) {
            events.publishEvent(new HoldsLifted(List.of(container)));
        }
    }

    private boolean lift(Hold hold, ZoneId zone) {
        var done = latestSince(hold).filter(one -> mayLift(hold, one) && one.isSurelyAfter(day(hold, zone)));
        done.ifPresent(one -> write(hold, one));
        return done.isPresent();
    }

    /** The event also tells that a record was taken back, so the last may be older than the hold. */
    private Optional<Done> latestSince(Hold hold) {
        return jdbc.sql(CANDIDATES + """
                  and (q.recorded_at, q.id) > (h.recorded_at, h.id)
                order by q.recorded_at desc, q.id desc limit 1""").param("hold", hold.id())
                .param("container", hold.containerId()).query(Done.class)
                .optional();
    }

    /** Whether somebody may say that this test came after the hold and answers it. */
    boolean mayAnswer(Hold hold, UUID requalification) {
        var zone = places.zoneOf(hold.containerId());
        return jdbc.sql(CANDIDATES + " and q.id = :requalification").param("hold", hold.id())
                .param("container", hold.containerId()).param("requalification", requalification).query(Done.class)
                .optional().filter(one -> mayLift(hold, one) && !one.isSurelyBefore(day(hold, zone))).isPresent();
    }

    private static LocalDate day(Hold hold, ZoneId zone) {
        return LocalDate.ofInstant(hold.occurredAt(), zone);
    }

    private static boolean mayLift(Hold hold, Done done) {
        var method = done.method;
        return done.result == Result.PASSED && method != null && hold.reason().isLiftedBy(method)
                && hold.reason().liftedBy(done.kind).contains(LiftedBy.REQUALIFICATION);
    }

    private void write(Hold hold, Done done) {
        Lifts.write(jdbc, hold.id(), new Way.Requalification(done.id), null, clock.instant(), done.recordedBy);
    }
}
