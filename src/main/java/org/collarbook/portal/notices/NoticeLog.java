package org.collarbook.portal.notices;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.CustomerScope;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import com.fasterxml.jackson.annotation.JsonIgnore;
import com.fasterxml.jackson.annotation.JsonRawValue;

import io.swagger.v3.oas.annotations.media.Schema;

/** What was written for a subscription and what came of each attempt to send it, the latest first; and sending it anew. */
@Component
class NoticeLog {

    enum Status {
        PENDING,
        DELIVERED,
        GIVEN_UP
    }

    /** {@code nextAttemptAt}: not before, while it is pending. */
    @Schema(name = "LoggedNotice")
    record Logged(@JsonIgnore long number, UUID id, String type, @Nullable UUID containerId, Instant occurredAt,
            Status status, int attempts, @Nullable Instant nextAttemptAt, @Nullable Instant settledAt,
            @JsonRawValue @Schema(implementation = NoticeBody.class) String body) {}

    @Schema(name = "NoticeAttempt")
    record Tried(@JsonIgnore long number, UUID noticeId, Instant attemptedAt, int tookMs, Attempt.Outcome outcome,
            @Nullable Integer httpStatus, @Nullable String error) {}

    private final JdbcClient jdbc;
    private final Subscriptions subscriptions;
    private final NoticeQueue queue;
    private final Clock clock;

    NoticeLog(JdbcClient jdbc, Subscriptions subscriptions, NoticeQueue queue, Clock clock) {
        this.jdbc = jdbc;
        this.subscriptions = subscriptions;
        this.queue = queue;
        this.clock = clock;
    }

    List<Logged> notices(UUID subscription, @Nullable Status status, @Nullable Long before, PageSize size,
            CustomerScope scope) {
        subscriptions.require(subscription, scope);
        return jdbc.sql("""
                select * from notice where subscription_id = :subscription
                  and (cast(:status as text) is null or status = :status)
                  and number < coalesce(cast(:before as bigint), 9223372036854775807)
                order by number desc limit :limit""").param("subscription", subscription)
                .param("status", status == null ? null : status.name()).param("before", before)
                .param("limit", size.limit()).query(NoticeLog::notice).list();
    }

    private static Logged notice(ResultSet row, int number) throws SQLException {
        var status = Status.valueOf(row.getString("status"));
        return new Logged(row.getLong("number"), row.getObject("id", UUID.class), row.getString("type"),
                row.getObject("container_id", UUID.class), StoredMoment.of(row, "occurred_at"), status,
                row.getInt("attempts"), status == Status.PENDING ? StoredMoment.of(row, "next_attempt_at") : null,
                status == Status.PENDING ? null : StoredMoment.of(row, "settled_at"), row.getString("body"));
    }

    List<Tried> attempts(UUID subscription, @Nullable UUID notice, @Nullable Long before, PageSize size,
            CustomerScope scope) {
        subscriptions.require(subscription, scope);
        return jdbc.sql("""
                select * from notice_attempt where subscription_id = :subscription
                  and (cast(:notice as uuid) is null or notice_id = :notice)
                  and number < coalesce(cast(:before as bigint), 9223372036854775807)
                order by number desc limit :limit""").param("subscription", subscription).param("notice", notice)
                .param("before", before).param("limit", size.limit())
                .query((row, number) -> new Tried(row.getLong("number"), row.getObject("notice_id", UUID.class),
                        StoredMoment.of(row, "attempted_at"), row.getInt("took_ms"),
                        Attempt.Outcome.valueOf(row.getString("outcome")), row.getObject("http_status", Integer.class),
                        row.getString("error")))
                .list();
    }

    /** How many are sent anew, with the id and the body of before: one, or all that occurred since then. */
    @Transactional(propagation = Propagation.MANDATORY)
    public int replay(UUID subscription, @Nullable UUID notice, @Nullable Instant since, CustomerScope scope) {
        subscriptions.requireActive(subscription, scope);
        queue.wake(subscription);
        int replayed = jdbc.sql("""
                update notice set status = 'PENDING', attempts = 0, settled_at = null, next_attempt_at = :now
                where subscription_id = :subscription and (id = :notice or occurred_at >= :since)""")
                .param("now", NoticeQueue.utc(clock.instant())).param("subscription", subscription)
                .param("notice", notice).param("since", since == null ? null : NoticeQueue.utc(since)).update();
        if (notice != null && replayed == 0) {
            throw Problem.notFound("notice").asException();
        }
        return replayed;
    }
}
