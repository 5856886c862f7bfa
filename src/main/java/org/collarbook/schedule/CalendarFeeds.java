package org.collarbook.schedule;

import java.sql.ResultSet;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.platform.Ids;
import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import io.swagger.v3.oas.annotations.media.Schema;
import tools.jackson.databind.json.JsonMapper;

/** The calendars that are subscribed to. */
@Component
class CalendarFeeds {

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    CalendarFeeds(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    /** What is known of a feed once its address has been shown. */
    @Schema(name = "CalendarFeed")
    record Feed(UUID id, String name, ScheduleQuestion filter, Instant createdAt, @Nullable Instant revokedAt) {}

    UUID open(String name, ScheduleFilter filter, FeedToken token, UUID by) {
        var id = Ids.next();
        jdbc.sql("insert into calendar_feed (id, name, token_hash, filter, created_at, created_by)"
                + " values (?, ?, ?, ?, ?, ?)")
                .params(id, name, token.hash(), json.writeValueAsString(ScheduleQuestion.of(filter)), now(), by)
                .update();
        return id;
    }

    /** An unrevoked feed and what it was opened for. */
    record Opened(UUID id, ScheduleQuestion filter) {}

    Optional<Opened> find(FeedToken token) {
        return jdbc.sql("select id, filter from calendar_feed where token_hash = ? and revoked_at is null")
                .param(token.hash()).query((row, number) -> new Opened(row.getObject("id", UUID.class),
                        question(row.getString("filter"))))
                .optional();
    }

    List<Feed> all() {
        return jdbc.sql("select id, name, filter, created_at, revoked_at from calendar_feed order by created_at, id")
                .query((row, number) -> new Feed(row.getObject("id", UUID.class), row.getString("name"),
                        question(row.getString("filter")),
                        StoredMoment.of(row, "created_at"), StoredMoment.orNull(row, "revoked_at")))
                .list();
    }

    void revoke(UUID id) {
        if (jdbc.sql("update calendar_feed set revoked_at = coalesce(revoked_at, ?) where id = ?").params(now(), id)
                .update() == 0) {
            throw Problem.notFound("calendar feed").asException();
        }
    }

    private ScheduleQuestion question(String filter) {
        return json.readValue(filter, ScheduleQuestion.class);
    }

    private OffsetDateTime now() {
        return OffsetDateTime.now(clock.withZone(ZoneOffset.UTC));
    }
}
