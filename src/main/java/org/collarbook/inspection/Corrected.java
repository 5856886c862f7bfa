package org.collarbook.inspection;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.UUID;

import org.collarbook.platform.Problem;
import org.collarbook.platform.StoredMoment;
import org.jspecify.annotations.Nullable;

/** A record was a mistake, and why; {@code replacedBy} is null when it is void. */
public record Corrected(@Nullable UUID replacedBy, String reason, Instant recordedAt, UUID recordedBy) {

    /** Null where there is no correction. */
    static @Nullable Corrected read(ResultSet row) throws SQLException {
        return row.getObject("correction_id") == null
                ? null
                : new Corrected(row.getObject("replaced_by", UUID.class), row.getString("correction_reason"),
                        StoredMoment.of(row, "corrected_at"),
                        row.getObject("corrected_by", UUID.class));
    }

    /** Each record is corrected once. */
    Problem refusal() {
        var problem = Problem.conflict("ALREADY_CORRECTED", "This record was corrected already" + (replacedBy == null
                ? " and is void: record the work anew"
                : ": correct the entry that took its place") + ". Nothing was stored.");
        return replacedBy == null ? problem : problem.with("replacedBy", replacedBy);
    }
}
