package org.collarbook.access;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.PageSize;
import org.collarbook.platform.StoredMoment;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;

import io.swagger.v3.oas.annotations.media.Schema;

/** Who asked for which change, and who was refused. Lines are appended, never changed. */
@Component
class AccessLog {

    private static final Logger log = LoggerFactory.getLogger(AccessLog.class);

    /** One request as it was answered. */
    @Schema(name = "AccessLogLine")
    record Line(long number, Instant at, UUID requestId, @Nullable UUID callerId, @Nullable String caller,
            String method, @Nullable String endpoint, List<String> ids, int status, boolean denied) {}

    /** What lines are asked for; null is any. */
    record Filter(@Nullable UUID caller, @Nullable String method, @Nullable String endpoint, @Nullable Boolean denied,
            @Nullable Instant from, @Nullable Instant before) {}

    private final JdbcClient jdbc;
    private final Clock clock;

    AccessLog(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /**
     * After the request is settled, in a statement of its own. A line that cannot be written does not undo what was
     * recorded, which names its caller itself: the answer stands, and the line goes to the service's own log as an error.
     */
    void write(UUID request, @Nullable Caller caller, String method, @Nullable String endpoint, List<String> ids,
            int status, boolean denied) {
        try {
            jdbc.sql("""
                    insert into access_log (at, request_id, caller_id, caller, method, endpoint, ids, status, denied)
                    values (?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                    .params(clock.instant().atOffset(ZoneOffset.UTC), request, caller == null ? null : caller.id(),
                            caller == null ? null : caller.name(), method, endpoint, ids.toArray(String[]::new), status,
                            denied)
                    .update();
        } catch (DataAccessException | TransactionException lost) {
            log.error("A line of the access log could not be written: request {} of {}, {} {} {}, answered {}", request,
                    caller == null ? "nobody" : caller.id(), method, endpoint, ids, status, lost);
        }
    }

    /** The latest first. */
    List<Line> page(Filter filter, @Nullable Long before, PageSize size) {
        var conditions = new ArrayList<String>();
        var parameters = new ArrayList<Object>();
        add("number < ?", before, conditions, parameters);
        add("caller_id = ?", filter.caller, conditions, parameters);
        add("method = ?", filter.method, conditions, parameters);
        add("endpoint = ?", filter.endpoint, conditions, parameters);
        add("at >= ?", moment(filter.from), conditions, parameters);
        add("at < ?", moment(filter.before), conditions, parameters);
        if (filter.denied != null) {
            conditions.add(filter.denied ? "denied" : "not denied");
        }
        parameters.add(size.limit());
        return jdbc.sql("select number, at, request_id, caller_id, caller, method, endpoint, ids, status, denied"
                + " from access_log" + (conditions.isEmpty() ? "" : " where " + String.join(" and ", conditions))
                + " order by number desc limit ?").params(parameters).query(AccessLog::line).list();
    }

    private static void add(String condition, @Nullable Object value, List<String> conditions,
            List<Object> parameters) {
        if (value != null) {
            conditions.add(condition);
            parameters.add(value);
        }
    }

    private static @Nullable OffsetDateTime moment(@Nullable Instant instant) {
        return instant == null ? null : instant.atOffset(ZoneOffset.UTC);
    }

    private static Line line(ResultSet row, int number) throws SQLException {
        return new Line(row.getLong("number"), StoredMoment.of(row, "at"),
                row.getObject("request_id", UUID.class), row.getObject("caller_id", UUID.class),
                row.getString("caller"), row.getString("method"), row.getString("endpoint"),
                List.of((String[]) row.getArray("ids").getArray()), row.getInt("status"), row.getBoolean("denied"));
    }
}
