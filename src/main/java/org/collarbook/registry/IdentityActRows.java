package org.collarbook.registry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.platform.Ids;
import org.collarbook.platform.StoredMoment;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads and writes the acts themselves. */
@Component
class IdentityActRows {

    private static final String SELECT = """
            select a.id, a.kind, a.from_id, a.into_id, a.set_aside, a.confirmed, a.undoes, a.reason, a.recorded_at,
              a.recorded_by, u.reason as undone_for, u.recorded_at as undone_at, u.recorded_by as undone_by
            from identity_act a left join identity_act_undo u on u.act_id = a.id
            """;

    private final JdbcClient jdbc;
    private final Clock clock;

    IdentityActRows(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** An act that is to be recorded. */
    record New(IdentityAct.Kind kind, UUID from, UUID into, List<String> setAside, List<String> confirmed,
            @Nullable UUID undoes, String reason) {}

    UUID write(New act, UUID by) {
        var id = Ids.next();
        jdbc.sql("""
                insert into identity_act (id, kind, from_id, into_id, set_aside, confirmed, undoes, reason,
                    recorded_at, recorded_by)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")
                .params(id, act.kind.name(), act.from, act.into, act.setAside.toArray(String[]::new),
                        act.confirmed.toArray(String[]::new), act.undoes, act.reason, now(), by)
                .update();
        return id;
    }

    void writeUndo(UUID act, List<String> confirmed, String reason, UUID by) {
        jdbc.sql("insert into identity_act_undo (act_id, confirmed, reason, recorded_at, recorded_by)"
                + " values (?, ?, ?, ?, ?)")
                .params(act, confirmed.toArray(String[]::new), reason, now(), by).update();
    }

    private OffsetDateTime now() {
        return clock.instant().atOffset(ZoneOffset.UTC);
    }

    Optional<IdentityAct> find(UUID id) {
        return jdbc.sql(SELECT + "where a.id = ?").param(id).query(IdentityActRows::read).optional();
    }

    /** The latest act in force that came after this one and touches one of its two records. */
    Optional<UUID> laterThan(IdentityAct act) {
        return jdbc.sql("""
                select l.id from identity_act l join identity_act a on a.id = :act
                where l.number > a.number and (l.from_id in (:one, :other) or l.into_id in (:one, :other))
                  and not exists (select from identity_act_undo u where u.act_id = l.id)
                order by l.number desc limit 1""").param("act", act.id()).param("one", act.from())
                .param("other", act.into()).query(UUID.class).optional();
    }

    /** A container's acts, the latest first; from just before the one given, when one is. */
    List<IdentityAct> of(UUID container, @Nullable UUID before, int atMost) {
        return jdbc.sql(SELECT + """
                where (a.from_id = :container or a.into_id = :container)
                  and (cast(:before as uuid) is null or a.id < cast(:before as uuid))
                order by a.id desc limit :most""").param("container", container).param("before", before)
                .param("most", atMost).query(IdentityActRows::read).list();
    }

    private static IdentityAct read(ResultSet row, int number) throws SQLException {
        var undoneAt = StoredMoment.orNull(row, "undone_at");
        return new IdentityAct(row.getObject("id", UUID.class), IdentityAct.Kind.valueOf(row.getString("kind")),
                row.getObject("from_id", UUID.class), row.getObject("into_id", UUID.class),
                List.of((String[]) row.getArray("set_aside").getArray()),
                List.of((String[]) row.getArray("confirmed").getArray()), row.getObject("undoes", UUID.class),
                row.getString("reason"), StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class),
                undoneAt == null
                        ? null
                        : new IdentityAct.Undone(row.getString("undone_for"), undoneAt,
                                row.getObject("undone_by", UUID.class)));
    }
}
