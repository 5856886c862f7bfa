package org.collarbook.registry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;

import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.ReliefValve;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.Use;
import org.jspecify.annotations.Nullable;

import jakarta.persistence.Embeddable;

/** {@link Particulars} as the table keeps them. */
@Embeddable
record ParticularColumns(@Nullable Boolean marksLegible, @Nullable Boolean coated, @Nullable Boolean lined,
        @Nullable String steel, @Nullable String installation, @Nullable String reliefValve, @Nullable String use,
        @Nullable String lading,
        @Nullable Boolean exclusive, @Nullable Boolean corrosionFree, @Nullable Boolean owned, @Nullable String owner,
        @Nullable Boolean ownerConsent, @Nullable String permitNumber, @Nullable LocalDate permitExpires,
        @Nullable Integer permitIntervalYears, @Nullable String extendedPeriod, @Nullable LocalDate schemeDue,
        @Nullable LocalDate outOfServiceSince, Boolean collarRead) {

    static final String NAMES = """
            marks_legible, coated, lined, steel, installation, relief_valve, use, lading, exclusive, corrosion_free,
            owned, owner, owner_consent, permit_number, permit_expires, permit_interval_years, extended_period,
            scheme_due, out_of_service_since, collar_read""";

    static ParticularColumns of(Particulars known) {
        var service = known.service();
        var permit = known.permit();
        return new ParticularColumns(known.marksLegible(), known.coated(), known.lined(), name(known.steel()),
                name(known.installation()), name(known.reliefValve()), name(known.use()), service.lading() == null
                        ? null
                        : service.lading().name(),
                service.exclusive(), service.corrosionFree(), known.ownership().owned(), known.ownership().owner(),
                known.ownership().consent(), permit == null ? null : permit.number(),
                permit == null ? null : permit.expires(), permit == null ? null : permit.intervalYears(),
                name(known.extendedPeriod()), known.schemeDue() == null ? null : known.schemeDue().atDay(1),
                known.outOfServiceSince(), known.collarRead());
    }

    @Nullable
    Object[] values() {
        return new @Nullable Object[]{marksLegible, coated, lined, steel, installation, reliefValve, use, lading,
                exclusive,
                corrosionFree, owned, owner, ownerConsent, permitNumber, permitExpires, permitIntervalYears,
                extendedPeriod, schemeDue, outOfServiceSince, collarRead};
    }

    static Particulars read(ResultSet row) throws SQLException {
        var lading = row.getString("lading");
        var schemeDue = row.getObject("scheme_due", LocalDate.class);
        return new Particulars(truth(row, "coated"), truth(row, "lined"), word(row, "steel", Steel.class),
                word(row, "installation", Installation.class), word(row, "relief_valve", ReliefValve.class),
                word(row, "use", Use.class),
                new Service(lading == null ? null : new Lading(lading), truth(row, "exclusive"),
                        truth(row, "corrosion_free")),
                new Ownership(truth(row, "owned"), row.getString("owner"), truth(row, "owner_consent")),
                truth(row, "marks_legible"), permit(row), word(row, "extended_period", ExtendedPeriod.class),
                schemeDue == null ? null : YearMonth.from(schemeDue),
                row.getObject("out_of_service_since", LocalDate.class), row.getBoolean("collar_read"));
    }

    private static @Nullable Permit permit(ResultSet row) throws SQLException {
        var number = row.getString("permit_number");
        var expires = row.getObject("permit_expires", LocalDate.class);
        var interval = row.getObject("permit_interval_years", Integer.class);
        return number == null && expires == null && interval == null ? null : new Permit(number, expires, interval);
    }

    private static @Nullable Boolean truth(ResultSet row, String column) throws SQLException {
        return row.getObject(column, Boolean.class);
    }

    private static <E extends Enum<E>> @Nullable E word(ResultSet row, String column, Class<E> words)
            throws SQLException {
        var text = row.getString(column);
        return text == null ? null : Enum.valueOf(words, text);
    }

    private static @Nullable String name(@Nullable Enum<?> word) {
        return word == null ? null : word.name();
    }
}
