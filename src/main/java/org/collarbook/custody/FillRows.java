package org.collarbook.custody;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.StoredMoment;

/** How rows of fills are read. */
final class FillRows {

    static final String SELECT = """
            select f.id, f.container_id, f.filled_on, f.filled_at, f.net_lb, f.gross_lb, f.tare_lb, f.heel_lb,
              f.added_lb, f.gallons_added, f.liquid_temperature_f, p.code as product, f.specific_gravity,
              f.most_net_lb, f.looked_at, f.leak_checked, f.leak_found, f.filled_by, f.observed_overfill,
              f.told_afterwards, f.refused_for, f.site_id,
              b.hash as rule_book, f.recorded_at, f.recorded_by
            from filed_fill f left join product p on p.id = f.product_id left join rule_book b on b.id = f.rule_book_id
            """;

    private FillRows() {}

    static PastFill read(ResultSet row, int number) throws SQLException {
        return new PastFill(row.getObject("id", UUID.class), row.getObject("container_id", UUID.class),
                row.getObject("filled_on", LocalDate.class), StoredMoment.orNull(row, "filled_at"),
                row.getBigDecimal("net_lb"), row.getBigDecimal("gross_lb"), row.getBigDecimal("tare_lb"),
                row.getBigDecimal("heel_lb"), row.getBigDecimal("added_lb"), row.getBigDecimal("gallons_added"),
                row.getBigDecimal("liquid_temperature_f"), row.getString("product"),
                row.getBigDecimal("specific_gravity"), row.getBigDecimal("most_net_lb"),
                row.getObject("looked_at", Boolean.class), row.getObject("leak_checked", Boolean.class),
                row.getObject("leak_found", Boolean.class), row.getString("filled_by"),
                row.getBoolean("observed_overfill"), row.getBoolean("told_afterwards"),
                List.of((String[]) row.getArray("refused_for").getArray()),
                row.getObject("site_id", UUID.class), row.getString("rule_book"),
                StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class));
    }
}
