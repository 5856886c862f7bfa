package org.collarbook.registry.web;

import java.util.LinkedHashMap;
import java.util.Map;

import org.collarbook.registry.stamps.Stamp;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** The parts of one stamp by name; a part that it does not have is absent. */
final class StampFields {

    private final Map<String, Object> fields = new LinkedHashMap<>();

    private StampFields() {}

    static Map<String, Object> of(Stamp stamp) {
        var parts = new StampFields();
        switch (stamp) {
            case Stamp.Design(var design) -> parts.design(design);
            case Stamp.OriginalTest tested -> parts.tested(tested);
            case Stamp.Requalified(var mark) -> parts.requalified(mark);
            case Stamp.Holds(var capacity) -> parts.holds(capacity);
            case Stamp.Weighs(var tare) -> parts.put("amount", tare.pounds()).put("unit", "lb");
            case Stamp.Tagged(var tag) -> parts.put("tag", tag.value());
            case Stamp.Numbered(var serial) -> parts.put("serial", serial.value());
            case Stamp.MadeBy(var maker) -> parts.put("maker", maker.value());
            case Stamp.WholeCollar(var design, var serial, var maker, var tested) -> parts.design(design)
                    .put("serial", serial.value()).put("maker", maker.value()).tested(tested);
        }
        return parts.fields;
    }

    private StampFields put(String name, @Nullable Object value) {
        if (value != null) {
            fields.put(name, value);
        }
        return this;
    }

    private StampFields design(Specification design) {
        var also = design.alsoMarked();
        return put("specification", design.toString()).put("authority", design.authority().name())
                .put("family", design.family()).put("detail", design.detail()).put("pressure", design.pressure())
                .put("alsoMarked", also == null ? null : also.toString());
    }

    private StampFields tested(Stamp.@Nullable OriginalTest tested) {
        return tested == null
                ? this
                : put("month", tested.month().toString()).put("inspector", tested.inspector());
    }

    private void requalified(RequalificationMark mark) {
        var rin = mark.rin();
        put("month", mark.month().toString()).put("methods", mark.methods())
                .put("rin", rin == null ? null : rin.value())
                .put("star", mark.star()).put("plus", mark.plus());
    }

    private void holds(WaterCapacity capacity) {
        put("amount", capacity.amount()).put("unit", capacity.unit().symbol());
    }
}
