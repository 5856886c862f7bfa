package org.collarbook.registry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

import jakarta.persistence.Embeddable;

/** {@link Marks} as the table keeps them. */
@Embeddable
record MarkColumns(String kind, String markScheme, String specification, @Nullable String maker, String serial,
        @Nullable LocalDate manufactured, @Nullable String waterCapacity, @Nullable BigDecimal waterCapacityLb,
        @Nullable BigDecimal tareLb, @Nullable Integer servicePressurePsig, String size,
        @Nullable String specificationAsStamped, @Nullable String serialAsStamped,
        @Nullable String manufacturedAsStamped, @Nullable String waterCapacityAsStamped,
        @Nullable String tareAsStamped) {

    static final String NAMES = """
            kind, mark_scheme, specification, maker, serial, manufactured, water_capacity, water_capacity_lb, tare_lb,
            service_pressure_psig, size, specification_as_stamped, serial_as_stamped, manufactured_as_stamped,
            water_capacity_as_stamped, tare_as_stamped""";

    static MarkColumns of(Marks marks) {
        var specification = marks.specification();
        var month = marks.manufactured();
        var capacity = marks.waterCapacity();
        var tare = marks.tare();
        var pressure = marks.servicePressure();
        return new MarkColumns(marks.kind().name(), MarkScheme.of(specification.value()).name(),
                specification.value().toString(), marks.maker() == null ? null : marks.maker().value(),
                marks.serial().value().value(), month == null ? null : month.value().atDay(1),
                capacity == null ? null : capacity.value().toString(),
                capacity == null ? null : capacity.value().toPounds().setScale(3, RoundingMode.HALF_EVEN),
                tare == null ? null : tare.value().pounds(), pressure == null ? null : pressure.psig(),
                marks.size().word(), specification.raw(), marks.serial().raw(), month == null ? null : month.raw(),
                capacity == null ? null : capacity.raw(), tare == null ? null : tare.raw());
    }

    @Nullable
    Object[] values() {
        return new @Nullable Object[]{kind, markScheme, specification, maker, serial, manufactured, waterCapacity,
                waterCapacityLb, tareLb, servicePressurePsig, size, specificationAsStamped, serialAsStamped,
                manufacturedAsStamped, waterCapacityAsStamped, tareAsStamped};
    }

    static Marks read(ResultSet row) throws SQLException {
        var maker = row.getString("maker");
        var month = row.getObject("manufactured", LocalDate.class);
        var capacity = row.getString("water_capacity");
        var tare = row.getBigDecimal("tare_lb");
        var pressure = row.getObject("service_pressure_psig", Integer.class);
        return new Marks(ContainerKind.valueOf(row.getString("kind")),
                new Stamped<>(Specification.parse(row.getString("specification")),
                        row.getString("specification_as_stamped")),
                maker == null ? null : new MakerSymbol(maker),
                new Stamped<>(new Serial(row.getString("serial")), row.getString("serial_as_stamped")),
                month == null
                        ? null
                        : new Stamped<>(YearMonth.from(month), row.getString("manufactured_as_stamped")),
                capacity == null
                        ? null
                        : new Stamped<>(WaterCapacity.parse(capacity), row.getString("water_capacity_as_stamped")),
                tare == null ? null : new Stamped<>(new Tare(tare), row.getString("tare_as_stamped")),
                pressure == null ? null : new ServicePressure(pressure));
    }
}
