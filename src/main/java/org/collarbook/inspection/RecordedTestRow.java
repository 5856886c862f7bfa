package org.collarbook.inspection;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;

import org.collarbook.inspection.RecordedTest.Correcting;
import org.collarbook.inspection.RecordedTest.Sheet;
import org.collarbook.inspection.Requalifier.Approval;
import org.collarbook.inspection.Requalifier.Named;
import org.collarbook.inspection.bench.Attempt;
import org.collarbook.inspection.bench.Checked;
import org.collarbook.inspection.bench.CondemningGround;
import org.collarbook.inspection.bench.Expansion;
import org.collarbook.inspection.bench.Remark;
import org.collarbook.platform.StoredMoment;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;

import tools.jackson.databind.json.JsonMapper;

/** How {@link RecordedTests} reads a row. */
record RecordedTestRow(JsonMapper json) {

    RecordedTest read(ResultSet row, int number) throws SQLException {
        return new RecordedTest(row.getObject("id", UUID.class), row.getObject("container_id", UUID.class),
                Requalifications.read(row), row.getObject("performed_on", LocalDate.class),
                row.getString("as_stamped"),
                row.getObject("requalification_id") == null ? null : sheet(row), correcting(row), Corrected.read(row),
                StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class));
    }

    private Sheet sheet(ResultSet row) throws SQLException {
        return new Sheet(requalifier(row), list(row, "visual", Checked[].class),
                row.getObject("marked_pressure_psig", Integer.class),
                row.getObject("test_pressure_psig", Integer.class), row.getBigDecimal("minimum_psig"),
                expansion(row), row.getBigDecimal("permanent_percent"), row.getBigDecimal("limit_percent"),
                list(row, "repeats", Attempt[].class), row.getString("coating"), row.getString("owner"),
                row.getString("operator"), row.getBigDecimal("tare_lb"), row.getBigDecimal("tare_loss_percent"),
                Arrays.stream((String[]) row.getArray("grounds").getArray()).map(CondemningGround::valueOf).toList(),
                row.getString("disposition"), row.getString("note"), list(row, "remarks", Remark[].class));
    }

    private <T> List<T> list(ResultSet row, String column, Class<T[]> type) throws SQLException {
        return List.of(json.readValue(row.getString(column), type));
    }

    private static @Nullable Named requalifier(ResultSet row) throws SQLException {
        var name = row.getString("requalifier_name");
        return name == null
                ? null
                : new Named(new Rin(row.getString("rin")), name,
                        new Approval(row.getObject("approved_from", LocalDate.class),
                                row.getObject("approval_expires", LocalDate.class)));
    }

    private static @Nullable Expansion expansion(ResultSet row) throws SQLException {
        var total = row.getBigDecimal("total_cm3");
        return total == null
                ? null
                : new Expansion(total.stripTrailingZeros(), row.getBigDecimal("permanent_cm3").stripTrailingZeros());
    }

    private static @Nullable Correcting correcting(ResultSet row) throws SQLException {
        var entry = row.getObject("made_corrects", UUID.class);
        return entry == null ? null : new Correcting(entry, row.getString("made_reason"));
    }
}
