package org.collarbook.portal.notices;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;

import org.collarbook.portal.notices.Attempt.Outcome;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/**
 * Who sends to which endpoint. An endpoint is claimed for as long as a lease, which is renewed before each notice; when
 * that runs out, as after a kill, the next service claims it anew. Leases go by the database's clock, which all services
 * share. Each claim has another fence, and only the latest can write. A notice waits for the earlier ones about its
 * container.
 */
@Component
class NoticeQueue {

    private static final String LEASE = "now() + interval '60 seconds'";

    /** Of the subscription {@code t}: what may be sent now. */
    private static final String READY = """
            from notice n where n.subscription_id = t.subscription_id and n.status = 'PENDING'
              and n.next_attempt_at <= :now and not exists (
                select from notice e where e.subscription_id = n.subscription_id and e.container_id = n.container_id
                  and e.status = 'PENDING' and e.number < n.number)""";

    record Turn(UUID subscription, long fence) {}

    /** A notice to send, where to, and with whose secrets. */
    record Next(UUID id, String url, byte[] body, int attempts, List<Secret> secrets) {}

    private final JdbcClient jdbc;
    private final Clock clock;
    private final RetrySchedule schedule = new RetrySchedule(new Random());

    NoticeQueue(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** The endpoint that waits longest for its turn. */
    Optional<Turn> claim() {
        return jdbc.sql("""
                update notice_turn set fence = fence + 1, lease_until = %s, last_turn = now()
                where subscription_id = (select t.subscription_id from notice_turn t
                    join notice_subscription s on s.id = t.subscription_id
                    where s.status = 'ACTIVE' and t.lease_until < now() and t.rests_until <= :now
                      and exists (select %s)
                    order by t.last_turn limit 1 for no key update of t skip locked)
                returning subscription_id, fence""".formatted(LEASE, READY)).param("now", utc(clock.instant()))
                .query((row, number) -> new Turn(row.getObject(1, UUID.class), row.getLong(2))).optional();
    }

    /** What is sent next, the lease renewed for it; nothing when there is none, or it is another's turn by now. */
    @Transactional
    public Optional<Next> next(Turn turn) {
        if (!renewed(turn)) {
            return Optional.empty();
        }
        return jdbc.sql("""
                select n.id, s.url, n.body, n.attempts from notice_turn t
                join notice_subscription s on s.id = t.subscription_id and s.status = 'ACTIVE'
                cross join lateral (select n.* %s order by n.number limit 1) n
                where t.subscription_id = :subscription and t.rests_until <= :now""".formatted(READY))
                .param("subscription", turn.subscription).param("now", utc(clock.instant()))
                .query((row, number) -> next(row, secrets(turn.subscription))).optional();
    }

    private boolean renewed(Turn turn) {
        return jdbc.sql("update notice_turn set lease_until = %s where subscription_id = ? and fence = ?"
                .formatted(LEASE)).params(turn.subscription, turn.fence).update() == 1;
    }

    private static Next next(ResultSet row, List<Secret> secrets) throws SQLException {
        return new Next(row.getObject("id", UUID.class), row.getString("url"),
                row.getString("body").getBytes(StandardCharsets.UTF_8), row.getInt("attempts"),
                secrets);
    }

    private List<Secret> secrets(UUID subscription) {
        return jdbc.sql("""
                select secret from notice_secret where subscription_id = ? and (valid_until is null or valid_until > ?)
                order by valid_until nulls first""").params(subscription, utc(clock.instant()))
                .query((row, number) -> new Secret(row.getBytes(1))).list();
    }

    /** Keeps what came of it; false when it was another's turn by now, and nothing was kept. */
    @Transactional
    public boolean record(Turn turn, Next sent, Instant at, Attempt attempt) {
        if (attempt.outcome() == Outcome.GONE) {
            // in the order in which pausing and resuming take them
            jdbc.sql("select id from notice_subscription where id = ? for no key update").param(turn.subscription)
                    .query(UUID.class).single();
        }
        // first, so that the row is locked and nobody claims it meanwhile
        if (!renewed(turn)) {
            return false;
        }
        jdbc.sql("""
                insert into notice_attempt (notice_id, subscription_id, attempted_at, took_ms, outcome, http_status,
                    error) values (?, ?, ?, ?, ?, ?, ?)""")
                .params(sent.id, turn.subscription, utc(at), attempt.tookMs(), attempt.outcome().name(),
                        attempt.httpStatus(), attempt.error())
                .update();
        switch (attempt.outcome()) {
            case DELIVERED -> settle(turn, sent, "DELIVERED");
            case GONE -> {
                settle(turn, sent, "GIVEN_UP");
                switchOff(turn);
            }
            case ANSWERED_OTHERWISE, TIMED_OUT, NOT_REACHED, ADDRESS_REFUSED ->
                postpone(turn, sent, Objects.requireNonNullElse(attempt.comeAgain(), Duration.ZERO));
        }
        return true;
    }

    private void settle(Turn turn, Next sent, String status) {
        jdbc.sql("update notice set status = ?, attempts = attempts + 1, settled_at = ? where id = ?")
                .params(status, utc(clock.instant()), sent.id).update();
        jdbc.sql("update notice_turn set failures = 0, rests_until = '-infinity' where subscription_id = ?")
                .param(turn.subscription).update();
    }

    private void switchOff(Turn turn) {
        jdbc.sql("""
                update notice_subscription set status = 'SWITCHED_OFF', status_since = ?
                where id = ? and status in ('ACTIVE', 'PAUSED')""")
                .params(utc(clock.instant()), turn.subscription).update();
        giveUp(turn.subscription);
    }

    /** What waits is sent no more, unless it is asked for again. */
    void giveUp(UUID subscription) {
        jdbc.sql(
                "update notice set status = 'GIVEN_UP', settled_at = ? where subscription_id = ? and status = 'PENDING'")
                .params(utc(clock.instant()), subscription).update();
    }

    private void postpone(Turn turn, Next sent, Duration atLeast) {
        var now = clock.instant();
        var delay = longer(schedule.after(sent.attempts + 1), atLeast);
        jdbc.sql("""
                update notice set attempts = attempts + 1, next_attempt_at = coalesce(:next, next_attempt_at),
                    status = case when cast(:next as timestamptz) is null then 'GIVEN_UP' else status end,
                    settled_at = case when cast(:next as timestamptz) is null then cast(:now as timestamptz) end
                where id = :id and status = 'PENDING'""").param("next", delay == null ? null : utc(now.plus(delay)))
                .param("now", utc(now)).param("id", sent.id).update();
        int failures = jdbc.sql("update notice_turn set failures = failures + 1 where subscription_id = ?"
                + " returning failures").param(turn.subscription).query(Integer.class).single();
        jdbc.sql("update notice_turn set rests_until = ? where subscription_id = ?")
                .params(utc(now.plus(Objects.requireNonNull(longer(schedule.rest(failures), atLeast)))),
                        turn.subscription)
                .update();
    }

    /** Given up is given up. */
    private static @Nullable Duration longer(@Nullable Duration delay, Duration atLeast) {
        return delay == null || delay.compareTo(atLeast) > 0 ? delay : atLeast;
    }

    /** Its turn is over; another may begin. */
    void release(Turn turn) {
        jdbc.sql("update notice_turn set lease_until = '-infinity' where subscription_id = ? and fence = ?")
                .params(turn.subscription, turn.fence).update();
    }

    /** Somebody asked for something to be sent, so it does not rest. */
    void wake(UUID subscription) {
        jdbc.sql("update notice_turn set failures = 0, rests_until = '-infinity' where subscription_id = ?")
                .param(subscription).update();
    }

    static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
