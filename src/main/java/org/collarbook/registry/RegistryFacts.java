package org.collarbook.registry;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.platform.JournalFact;
import org.collarbook.platform.Journalled;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import tools.jackson.databind.json.JsonMapper;

/**
 * What was registered, every correction, and how the container stood recorded after each: the row itself changes, so each
 * of its versions is a fact of its own, of which the table still tells the last.
 */
@Component
class RegistryFacts implements Journalled {

    private final JdbcClient jdbc;
    private final JsonMapper json;

    RegistryFacts(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    @Override
    public List<JournalFact> of(Collection<UUID> containers) {
        var ids = containers.toArray(UUID[]::new);
        var facts = new ArrayList<JournalFact>(jdbc.sql("""
                select id, container_id, act_id, takes_back, field, was, became, reason, recorded_at, recorded_by
                from mark_correction
                where container_id = any (?)""").param(ids).query(RegistryFacts::correction).list());
        // a null column is left out, so that one that a later release adds changes nothing of what was entered
        facts.addAll(jdbc.sql("""
                select c.id, c.version, jsonb_strip_nulls(to_jsonb(c) - 'id' - 'version') as recorded,
                    coalesce(last.recorded_at, c.registered_at) as recorded_at,
                    coalesce(last.recorded_by, c.registered_by) as recorded_by
                from container c left join lateral (
                    select recorded_at, recorded_by from mark_correction where container_id = c.id
                    order by recorded_at desc limit 1) last on c.version > 0
                where c.id = any (?)""").param(ids).query(this::version).list());
        return facts;
    }

    private JournalFact version(ResultSet row, int number) throws SQLException {
        var container = row.getObject("id", UUID.class);
        int version = row.getInt("version");
        var content = new TreeMap<String, String>();
        json.readTree(row.getString("recorded")).properties()
                .forEach(field -> content.put(field.getKey(), field.getValue().isString()
                        ? field.getValue().asString()
                        : field.getValue().toString()));
        content.put("version", String.valueOf(version));
        var subject = UUID.nameUUIDFromBytes((container + "/" + version).getBytes(StandardCharsets.UTF_8));
        var at = row.getObject("recorded_at", OffsetDateTime.class).toInstant();
        return new JournalFact(container, version == 0 ? JournalFact.FIRST_VERSION : JournalFact.LATER_VERSION,
                subject, at, at, row.getObject("recorded_by", UUID.class), content);
    }

    private static JournalFact correction(ResultSet row, int number) throws SQLException {
        var fields = new LinkedHashMap<String, @Nullable Object>();
        for (var column : List.of("field", "was", "became", "reason", "act_id", "takes_back")) {
            fields.put(column, row.getString(column));
        }
        var at = row.getObject("recorded_at", OffsetDateTime.class).toInstant();
        return new JournalFact(row.getObject("container_id", UUID.class), "CORRECTED", row.getObject("id", UUID.class),
                at, at, row.getObject("recorded_by", UUID.class), JournalFact.content(fields));
    }
}
