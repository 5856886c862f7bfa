package org.collarbook.custody;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.custody.StandingExtinguisher.Done;
import org.collarbook.platform.StoredMoment;
import org.collarbook.regulation.Extinguisher;
import org.collarbook.regulation.Method;

/** How extinguishers are read: one row each, its records in parallel arrays. */
final class ExtinguisherRows {

    static final String SELECT = """
            select e.id, e.site_id, e.label, e.type, e.rating_bc, e.manufactured, e.recorded_at, e.removed_at,
                   done.months, done.methods, done.people, done.moments
            from extinguisher e
            cross join lateral (
                select array_agg(to_char(r.month, 'YYYY-MM') order by r.month, r.recorded_at, r.id) as months,
                       array_agg(r.method order by r.month, r.recorded_at, r.id) as methods,
                       array_agg(r.done_by order by r.month, r.recorded_at, r.id) as people,
                       array_agg(r.recorded_at order by r.month, r.recorded_at, r.id) as moments
                from extinguisher_record r where r.extinguisher_id = e.id) done
            """;

    private ExtinguisherRows() {}

    static StandingExtinguisher read(ResultSet row, int number) throws SQLException {
        var type = row.getString("type");
        var manufactured = row.getObject("manufactured", LocalDate.class);
        var about = new NewExtinguisher(row.getObject("site_id", UUID.class), row.getString("label"),
                type == null ? null : Extinguisher.valueOf(type), row.getObject("rating_bc", Integer.class),
                manufactured == null ? null : YearMonth.from(manufactured));
        return new StandingExtinguisher(row.getObject("id", UUID.class), about,
                StoredMoment.of(row, "recorded_at"), StoredMoment.orNull(row, "removed_at"), records(row));
    }

    private static List<Done> records(ResultSet row) throws SQLException {
        var records = new ArrayList<Done>();
        if (row.getArray("months") != null) {
            var months = (String[]) row.getArray("months").getArray();
            var methods = (String[]) row.getArray("methods").getArray();
            var people = (String[]) row.getArray("people").getArray();
            var moments = (Timestamp[]) row.getArray("moments").getArray();
            for (int i = 0; i < months.length; i++) {
                records.add(new Done(YearMonth.parse(months[i]), Method.valueOf(methods[i]), people[i],
                        moments[i].toInstant()));
            }
        }
        return records;
    }
}
