package org.collarbook.holds;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.UUID;

import org.collarbook.platform.StoredMoment;
import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** How recalls are read. */
final class RecallRows {

    static final String SELECT = """
            select r.*, s.finished_at is not null as swept, e.reason as end_reason, e.recorded_at as ended_at
            from recall r join recall_sweep s on s.recall_id = r.id left join recall_end e on e.recall_id = r.id
            """;

    private RecallRows() {}

    static Recall read(ResultSet row, int number) throws SQLException {
        var specification = row.getString("specification");
        var about = new NewRecall(new MakerSymbol(row.getString("maker")), row.getString("lot"),
                specification == null ? null : Specification.parse(specification), serials(row),
                month(row, "manufactured_first"), month(row, "manufactured_last"), row.getString("issued_by"),
                row.getString("reference"), StoredMoment.of(row, "occurred_at"));
        return new Recall(row.getObject("id", UUID.class), about,
                StoredMoment.of(row, "recorded_at"), row.getBoolean("swept"), end(row));
    }

    private static @Nullable SerialRange serials(ResultSet row) throws SQLException {
        var first = row.getString("serial_first");
        return first == null ? null : new SerialRange(new Serial(first), new Serial(row.getString("serial_last")));
    }

    private static @Nullable YearMonth month(ResultSet row, String column) throws SQLException {
        var day = row.getObject(column, LocalDate.class);
        return day == null ? null : YearMonth.from(day);
    }

    private static Recall.@Nullable End end(ResultSet row) throws SQLException {
        var reason = row.getString("end_reason");
        return reason == null
                ? null
                : new Recall.End(reason, StoredMoment.of(row, "ended_at"));
    }

    static RecalledContainer container(ResultSet row, int number) throws SQLException {
        return new RecalledContainer(row.getObject("id", UUID.class), row.getString("specification"),
                row.getString("maker"), row.getString("serial"), row.getObject("manufactured", LocalDate.class),
                RecalledContainer.Outcome.valueOf(row.getString("outcome")),
                Arrays.asList((String[]) row.getArray("unknown").getArray()));
    }
}
