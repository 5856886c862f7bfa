package org.collarbook.intake;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;

import org.collarbook.platform.Problem;
import org.collarbook.platform.Revision;
import org.collarbook.platform.StoredMoment;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

import tools.jackson.databind.json.JsonMapper;

/** Keeps the column maps by name, and with each ledger a copy of the one that it is read by. */
@Component
class ColumnMaps {

    private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,59}");
    private static final String SELECT = "select name, version, content, changed_at, changed_by from column_map"
            + " where not dropped ";

    /** A map as it is kept. */
    record Kept(String name, int version, ColumnMapContent content, Instant changedAt, UUID changedBy) {}

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    ColumnMaps(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    List<Kept> all() {
        return jdbc.sql(SELECT + "order by name").query((row, n) -> kept(row)).list();
    }

    Optional<Kept> find(String name) {
        return jdbc.sql(SELECT + "and name = ?").param(name).query((row, n) -> kept(row)).optional();
    }

    private Kept kept(ResultSet row) throws SQLException {
        return new Kept(row.getString("name"), row.getInt("version"),
                json.readValue(row.getString("content"), ColumnMapContent.class),
                StoredMoment.of(row, "changed_at"),
                row.getObject("changed_by", UUID.class));
    }

    /** The map that an import names; refused where there is none. */
    ColumnMap named(String name) {
        var kept = find(name).orElseThrow(() -> Problem.invalid("map", "UNKNOWN_MAP", name,
                "the name of a column map: GET /api/column-maps tells them").asException());
        return ColumnMapCheck.of(kept.name, kept.version, kept.content);
    }

    /** Creates the map, which is true, or replaces it, where its version is named. */
    @Transactional
    public boolean put(String name, ColumnMapContent content, @Nullable String ifMatch, UUID by) {
        if (!NAME.matcher(name).matches()) {
            throw Problem.invalid("name", "INVALID_NAME", name,
                    "1 to 60 letters without accents, digits, dots, hyphens and underscores, a letter or digit first")
                    .asException();
        }
        ColumnMapCheck.of(name, 0, content);
        var now = clock.instant().atOffset(ZoneOffset.UTC);
        var text = json.writeValueAsString(content);
        boolean isNew = ifMatch == null && jdbc.sql("""
                insert into column_map as m (name, content, changed_at, changed_by)
                values (?, cast(? as jsonb), ?, ?)
                on conflict (name) do update set content = excluded.content, version = m.version + 1,
                    changed_at = excluded.changed_at, changed_by = excluded.changed_by, dropped = false
                where m.dropped""").params(name, text, now, by).update() == 1;
        if (!isNew) {
            requireMatch(name, ifMatch);
            jdbc.sql("""
                    update column_map set content = cast(? as jsonb), version = version + 1, changed_at = ?,
                        changed_by = ? where name = ?""").params(text, now, by, name).update();
        }
        return isNew;
    }

    @Transactional
    public void drop(String name, @Nullable String ifMatch, UUID by) {
        requireMatch(name, ifMatch);
        jdbc.sql("update column_map set dropped = true, changed_at = ?, changed_by = ? where name = ?")
                .params(clock.instant().atOffset(ZoneOffset.UTC), by, name).update();
    }

    private void requireMatch(String name, @Nullable String ifMatch) {
        int version = jdbc.sql("select version from column_map where name = ? and not dropped for update").param(name)
                .query(Integer.class).optional().orElseThrow(() -> Problem.of(HttpStatus.NOT_FOUND, "NOT_FOUND",
                        "No column map is known by this name, so there is no version of it to match.").asException());
        new Revision(version).requireMatch(ifMatch);
    }

    /** Lays a copy of the map beside the ledger, so that it is read the same way again whatever becomes of the map. */
    void keep(@Nullable ColumnMap map, UUID importId) {
        if (map != null) {
            jdbc.sql("""
                    update ledger_import set column_map_name = ?, column_map_version = ?,
                        column_map = cast(? as jsonb) where id = ?""")
                    .params(map.name(), map.version(), json.writeValueAsString(map.content()), importId).update();
        }
    }

    @Nullable
    ColumnMap keptWith(UUID importId) {
        return jdbc.sql("""
                select column_map_name, column_map_version, column_map from ledger_import
                where id = ? and column_map is not null""").param(importId)
                .query((row, n) -> ColumnMapCheck.of(row.getString(1), row.getInt(2),
                        json.readValue(row.getString(3), ColumnMapContent.class)))
                .optional().orElse(null);
    }
}
