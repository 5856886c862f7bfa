package org.collarbook.custody;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.JournalFact;
import org.collarbook.platform.Journalled;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Where containers went, and the gas put into them. */
@Component
class CustodyFacts implements Journalled {

    private final JdbcClient jdbc;

    CustodyFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<JournalFact> of(Collection<UUID> containers) {
        var ids = containers.toArray(UUID[]::new);
        var facts = new ArrayList<JournalFact>();
        facts.addAll(jdbc.sql("""
                select id, container_id, from_site_id, to_site_id, occurred_at, recorded_at, recorded_by
                from movement where container_id = any (?)""").param(ids).query(CustodyFacts::movement).list());
        facts.addAll(jdbc.sql("""
                select id, container_id, filled_on, net_lb, recorded_at, recorded_by
                from fill where container_id = any (?)""").param(ids).query(CustodyFacts::fill).list());
        return facts;
    }

    private static JournalFact movement(ResultSet row, int number) throws SQLException {
        var fields = new HashMap<String, @Nullable Object>();
        fields.put("fromSite", row.getObject("from_site_id", UUID.class));
        fields.put("toSite", row.getObject("to_site_id", UUID.class));
        return fact(row, "MOVED", time(row, "occurred_at"), fields);
    }

    private static JournalFact fill(ResultSet row, int number) throws SQLException {
        var day = row.getObject("filled_on", LocalDate.class);
        var fields = new HashMap<String, @Nullable Object>();
        fields.put("filledOn", day);
        fields.put("netLb", row.getBigDecimal("net_lb"));
        return fact(row, "FILLED", day.atStartOfDay(ZoneOffset.UTC).toInstant(), fields);
    }

    private static JournalFact fact(ResultSet row, String kind, Instant occurredAt,
            HashMap<String, @Nullable Object> fields) throws SQLException {
        return new JournalFact(row.getObject("container_id", UUID.class), kind, row.getObject("id", UUID.class),
                occurredAt, time(row, "recorded_at"), row.getObject("recorded_by", UUID.class),
                JournalFact.content(fields));
    }

    private static Instant time(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
