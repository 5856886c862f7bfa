package org.collarbook.registry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads corrections by their acts. */
@Component
class CorrectionRows {

    private static final String ACT = "coalesce(act_id, id)";
    private static final String SELECT = "select " + ACT + " as act, container_id, takes_back, field, was, became,"
            + " reason, recorded_at, recorded_by from mark_correction ";

    private final JdbcClient jdbc;

    CorrectionRows(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    private record Row(UUID act, UUID container, @Nullable UUID takesBack, Difference change, String reason,
            OffsetDateTime at, UUID by) {}

    Optional<Correction> find(UUID act) {
        return acts(jdbc.sql(SELECT + "where " + ACT + " = ? order by id").param(act).query(CorrectionRows::read)
                .list()).stream().findFirst();
    }

    /** A container's acts, the latest first; from just before the one given, when one is. */
    List<Correction> of(UUID container, @Nullable UUID before, int atMost) {
        return acts(jdbc.sql(SELECT + "where container_id = :container and " + ACT + " in (select distinct " + ACT
                + " from mark_correction where container_id = :container and (cast(:before as uuid) is null or " + ACT
                + " < cast(:before as uuid)) order by 1 desc limit :most) order by act desc, id")
                .param("container", container).param("before", before).param("most", atMost)
                .query(CorrectionRows::read).list());
    }

    /** The last act that changed this field of the container. */
    Optional<UUID> lastThatChanged(UUID container, String field) {
        return jdbc.sql("select " + ACT + " from mark_correction where container_id = ? and field = ?"
                + " order by recorded_at desc, id desc limit 1").params(container, field).query(UUID.class).optional();
    }

    private static List<Correction> acts(List<Row> rows) {
        var acts = new ArrayList<Correction>();
        for (var row : rows) {
            var last = acts.isEmpty() ? null : acts.getLast();
            var changes = new ArrayList<Difference>();
            if (last != null && last.id().equals(row.act)) {
                changes.addAll(acts.removeLast().changes());
            }
            changes.add(row.change);
            acts.add(new Correction(row.act, row.container, changes, row.reason, row.takesBack, row.at.toInstant(),
                    row.by));
        }
        return List.copyOf(acts);
    }

    private static Row read(ResultSet row, int number) throws SQLException {
        return new Row(row.getObject("act", UUID.class), row.getObject("container_id", UUID.class),
                row.getObject("takes_back", UUID.class),
                new Difference(row.getString("field"), row.getString("was"), row.getString("became")),
                row.getString("reason"), row.getObject("recorded_at", OffsetDateTime.class),
                row.getObject("recorded_by", UUID.class));
    }
}
