package org.collarbook.holds;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.UUID;

import org.collarbook.holds.Hold.Lift;
import org.collarbook.platform.StoredMoment;
import org.jspecify.annotations.Nullable;

/** How holds are read, each with its lift. */
final class HoldRows {

    static final String SELECT = """
            select h.id, h.container_id, h.reason, h.note, h.recall_id, h.import_id, h.occurred_at, h.recorded_at,
                   h.recorded_by,
                   l.lifted_by, l.requalification_id, l.person, l.qualification, l.note as lift_note,
                   l.recorded_at as lifted_at, l.recorded_by as lift_recorded_by
            from filed_hold h left join lift_in_force l on l.hold_id = h.id
            """;

    private HoldRows() {}

    static Hold read(ResultSet row, int number) throws SQLException {
        return new Hold(row.getObject("id", UUID.class), row.getObject("container_id", UUID.class),
                HoldReason.valueOf(row.getString("reason")), row.getString("note"),
                row.getObject("recall_id", UUID.class), row.getObject("import_id", UUID.class),
                StoredMoment.of(row, "occurred_at"),
                StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class), lift(row));
    }

    private static @Nullable Lift lift(ResultSet row) throws SQLException {
        var by = row.getString("lifted_by");
        return by == null
                ? null
                : new Lift(LiftedBy.valueOf(by), row.getObject("requalification_id", UUID.class),
                        row.getString("person"), row.getString("qualification"), row.getString("lift_note"),
                        StoredMoment.of(row, "lifted_at"),
                        row.getObject("lift_recorded_by", UUID.class));
    }
}
