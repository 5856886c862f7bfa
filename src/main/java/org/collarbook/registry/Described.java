package org.collarbook.registry;

import java.util.LinkedHashMap;
import java.util.Map;

import org.jspecify.annotations.Nullable;

/** A container's facts as texts by the names that requests give them, in one order. */
final class Described {

    private Described() {}

    static Map<String, @Nullable String> fields(NewContainer container) {
        var fields = marks(container.marks());
        fields.putAll(particulars(container.particulars()));
        fields.put("tag", text(container.tag()));
        fields.put("jurisdiction", text(container.further().jurisdiction()));
        return fields;
    }

    static Map<String, @Nullable String> marks(Marks marks) {
        var fields = new LinkedHashMap<String, @Nullable String>();
        fields.put("kind", marks.kind().name());
        fields.put("specification", marks.specification().asStamped());
        fields.put("maker", text(marks.maker()));
        fields.put("serial", marks.serial().asStamped());
        fields.put("manufactured", stamped(marks.manufactured()));
        fields.put("waterCapacity", stamped(marks.waterCapacity()));
        fields.put("tare", stamped(marks.tare()));
        fields.put("servicePressure", text(marks.servicePressure()));
        return fields;
    }

    /** The same without the stamps: each text reads in one way only. */
    static Map<String, @Nullable String> plainMarks(Marks marks) {
        return marks(new Marks(marks.kind(), Stamped.of(marks.specification().value()), marks.maker(),
                Stamped.of(marks.serial().value()), plain(marks.manufactured()), plain(marks.waterCapacity()),
                plain(marks.tare()), marks.servicePressure()));
    }

    private static <T> @Nullable Stamped<T> plain(@Nullable Stamped<T> mark) {
        return mark == null ? null : Stamped.of(mark.value());
    }

    /** What two records of one container should say alike: neither how it was read, nor the tag, nor who read it. */
    static Map<String, @Nullable String> comparable(NewContainer container) {
        var fields = plainMarks(container.marks());
        fields.putAll(particulars(container.particulars()));
        fields.remove("collarRead");
        return fields;
    }

    /** The other container of a conflict: its id and what is stamped on it. */
    static Map<String, Object> named(RegisteredContainer container) {
        var named = new LinkedHashMap<String, Object>();
        named.put("id", container.id());
        marks(container.marks()).forEach((field, text) -> {
            if (text != null) {
                named.put(field, text);
            }
        });
        return named;
    }

    private static Map<String, @Nullable String> particulars(Particulars known) {
        var fields = new LinkedHashMap<String, @Nullable String>();
        var permit = known.permit();
        fields.put("coated", text(known.coated()));
        fields.put("lined", text(known.lined()));
        fields.put("steel", text(known.steel()));
        fields.put("installation", text(known.installation()));
        fields.put("reliefValve", text(known.reliefValve()));
        fields.put("use", text(known.use()));
        fields.put("service.lading", text(known.service().lading()));
        fields.put("service.exclusive", text(known.service().exclusive()));
        fields.put("service.corrosionFree", text(known.service().corrosionFree()));
        fields.put("owned", text(known.ownership().owned()));
        fields.put("owner", known.ownership().owner());
        fields.put("ownerConsent", text(known.ownership().consent()));
        fields.put("marksLegible", text(known.marksLegible()));
        fields.put("permit.number", permit == null ? null : permit.number());
        fields.put("permit.expires", permit == null ? null : text(permit.expires()));
        fields.put("permit.intervalYears", permit == null ? null : text(permit.intervalYears()));
        fields.put("extendedPeriod", text(known.extendedPeriod()));
        fields.put("schemeDue", text(known.schemeDue()));
        fields.put("outOfServiceSince", text(known.outOfServiceSince()));
        fields.put("collarRead", text(known.collarRead()));
        return fields;
    }

    private static @Nullable String stamped(@Nullable Stamped<?> mark) {
        return mark == null ? null : mark.asStamped();
    }

    private static @Nullable String text(@Nullable Object value) {
        return value == null ? null : value.toString();
    }
}
