package org.collarbook.portal;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/** {@code added}: how much was put in; {@code net}: how much was in it then. Absent where nobody told. */
record LastFill(LocalDate day, @Nullable String added, @Nullable String net) {

    static @Nullable LastFill read(ResultSet row) throws SQLException {
        var day = row.getObject("filled_on", LocalDate.class);
        var gallons = amount(row.getBigDecimal("gallons_added"), " gal");
        return day == null
                ? null
                : new LastFill(day, gallons == null ? amount(row.getBigDecimal("added_lb"), " lb") : gallons,
                        amount(row.getBigDecimal("net_lb"), " lb"));
    }

    private static @Nullable String amount(@Nullable BigDecimal number, String unit) {
        return number == null ? null : Plain.number(number).toPlainString() + unit;
    }
}
