package org.collarbook.registry;

import java.time.YearMonth;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** What is stamped on the collar or the data plate; null is not known. */
public record Marks(ContainerKind kind, Stamped<Specification> specification, @Nullable MakerSymbol maker,
        Stamped<Serial> serial, @Nullable Stamped<YearMonth> manufactured,
        @Nullable Stamped<WaterCapacity> waterCapacity, @Nullable Stamped<Tare> tare,
        @Nullable ServicePressure servicePressure) {

    public NaturalKey naturalKey() {
        return new NaturalKey(MarkScheme.of(specification.value()), specification.value(), maker, serial.value(),
                manufactured == null ? null : manufactured.value());
    }

    public Size size() {
        return Size.of(kind, waterCapacity == null ? null : waterCapacity.value());
    }

    Marks keepingStampsOf(Marks before) {
        var keptSpecification = Stamped.keep(specification, before.specification);
        var keptSerial = Stamped.keep(serial, before.serial);
        return new Marks(kind, keptSpecification == null ? specification : keptSpecification, maker,
                keptSerial == null ? serial : keptSerial, Stamped.keep(manufactured, before.manufactured),
                Stamped.keep(waterCapacity, before.waterCapacity), Stamped.keep(tare, before.tare), servicePressure);
    }
}
