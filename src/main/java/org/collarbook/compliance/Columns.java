package org.collarbook.compliance;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;

import org.jspecify.annotations.Nullable;

/** Reads columns in which null means unknown. */
final class Columns {

    private Columns() {}

    static @Nullable Boolean flag(ResultSet row, String column) throws SQLException {
        return row.getObject(column, Boolean.class);
    }

    static <E extends Enum<E>> @Nullable E constant(ResultSet row, String column, Class<E> type) throws SQLException {
        var name = row.getString(column);
        return name == null ? null : Enum.valueOf(type, name);
    }

    static @Nullable LocalDate date(ResultSet row, String column) throws SQLException {
        return row.getObject(column, LocalDate.class);
    }

    static @Nullable YearMonth monthOrNull(ResultSet row, String column) throws SQLException {
        var first = date(row, column);
        return first == null ? null : YearMonth.from(first);
    }

    static YearMonth month(ResultSet row, String column) throws SQLException {
        return YearMonth.from(row.getObject(column, LocalDate.class));
    }
}
