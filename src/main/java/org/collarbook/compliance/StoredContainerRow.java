package org.collarbook.compliance;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.StoredContainer.DeclaredFacts;
import org.collarbook.compliance.StoredContainer.Identity;
import org.collarbook.compliance.StoredContainer.Place;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.Use;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** A container's own row before its requalifications are joined to it. */
record StoredContainerRow(UUID id, Identity identity, @Nullable Place place, @Nullable DeclaredFacts declared,
        boolean collarRead, FactsBuilder facts) {

    static StoredContainerRow of(ResultSet row) throws SQLException {
        return new StoredContainerRow(row.getObject("id", UUID.class), identity(row), place(row), declared(row),
                row.getBoolean("collar_read"), facts(row));
    }

    /** No recorded requalification is an empty history only where somebody has read the collar. */
    StoredContainer with(List<Requalification> history) {
        var known = history.isEmpty() && !collarRead ? null : history;
        Facts all = facts.requalifications(known).condition(standing(history)).build();
        return new StoredContainer(id, identity, place, all, declared);
    }

    /** The register knows of rejections and condemnations; damage is for the eye of whoever fills it. */
    private static Condition standing(List<Requalification> history) {
        return new Condition(List.of(), null, null, null, latest(history, Result.REJECTED),
                latest(history, Result.CONDEMNED));
    }

    private static @Nullable LocalDate latest(List<Requalification> history, Result result) {
        return history.stream().filter(past -> past.result() == result).map(past -> past.month().atDay(1))
                .max(LocalDate::compareTo).orElse(null);
    }

    private static Identity identity(ResultSet row) throws SQLException {
        return new Identity(row.getString("kind"), row.getString("specification"), row.getString("maker"),
                row.getString("serial"), Columns.monthOrNull(row, "manufactured"), row.getString("size"),
                row.getString("tag"), row.getString("water_capacity"), row.getBigDecimal("tare_lb"));
    }

    private static @Nullable Place place(ResultSet row) throws SQLException {
        var site = row.getObject("site_id", UUID.class);
        return site == null
                ? null
                : new Place(site, row.getString("site_code"), row.getString("site_name"),
                        ZoneId.of(row.getString("zone")), row.getObject("customer_id", UUID.class));
    }

    private static @Nullable DeclaredFacts declared(ResultSet row) throws SQLException {
        var facts = (String[]) row.getArray("declared").getArray();
        return facts.length == 0
                ? null
                : new DeclaredFacts(row.getString("declared_by"),
                        row.getObject("declared_on", LocalDate.class), Arrays.asList(facts));
    }

    private static FactsBuilder facts(ResultSet row) throws SQLException {
        var capacity = row.getString("water_capacity");
        var pressure = row.getObject("service_pressure_psig", Integer.class);
        return Facts.builder().jurisdiction(jurisdiction(row)).kind(ContainerKind.valueOf(row.getString("kind")))
                .specification(Specification.parse(row.getString("specification")))
                .manufactured(Columns.monthOrNull(row, "manufactured"))
                .waterCapacity(capacity == null ? null : WaterCapacity.parse(capacity))
                .servicePressure(pressure == null ? null : BigDecimal.valueOf(pressure))
                .coated(Columns.flag(row, "coated")).lined(Columns.flag(row, "lined"))
                .steel(Columns.constant(row, "steel", Steel.class))
                .installation(Columns.constant(row, "installation", Installation.class))
                .marksLegible(Columns.flag(row, "marks_legible")).ownerConsent(consent(row)).permit(permit(row))
                .use(Columns.constant(row, "use", Use.class)).service(service(row)).holds(List.of())
                .filledOn(Columns.date(row, "filled_on"));
    }

    private static @Nullable Jurisdiction jurisdiction(ResultSet row) throws SQLException {
        var site = row.getString("jurisdiction");
        var code = site == null ? row.getString("declared_jurisdiction") : site;
        return code == null ? null : new Jurisdiction(code);
    }

    /** The distributor's own container needs nobody's consent, 49 CFR 173.301(e). */
    private static @Nullable Boolean consent(ResultSet row) throws SQLException {
        return Boolean.TRUE.equals(Columns.flag(row, "owned")) ? Boolean.TRUE : Columns.flag(row, "owner_consent");
    }

    private static @Nullable Permit permit(ResultSet row) throws SQLException {
        var number = row.getString("permit_number");
        return number == null
                ? null
                : new Permit(number, Columns.date(row, "permit_expires"),
                        row.getObject("permit_interval_years", Integer.class));
    }

    private static Service service(ResultSet row) throws SQLException {
        var lading = row.getString("lading");
        return new Service(lading == null ? null : new Lading(lading), Columns.flag(row, "exclusive"),
                Columns.flag(row, "corrosion_free"));
    }
}
