package org.collarbook.registry.web;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.collarbook.registry.stamps.Stamp;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** The parts of one stamp by name; a part that it does not have is absent. */
final class StampFields {

    private final Map<String, Object> fields = new LinkedHashMap<>();
    private final List<String> marks = new ArrayList<>();

    private StampFields() {}

    static Map<String, Object> of(Stamp stamp) {
        var parts = new StampFields();
        switch (stamp) {
            case Stamp.Design(var design) -> parts.design(design);
            case Stamp.OriginalTest tested -> parts.tested(tested);
            case Stamp.Requalified(var mark) -> parts.requalified(mark);
            case Stamp.Holds(var capacity) -> parts.holds(capacity);
            case Stamp.Weighs(var tare, var kilograms) -> parts.put("amount", tare.pounds()).put("unit", "lb")
                    .put("stamped", kilograms(kilograms));
            case Stamp.Tagged(var tag) -> parts.put("tag", tag.value());
            case Stamp.Numbered(var serial) -> parts.put("serial", serial.value());
            case Stamp.MadeBy(var maker) -> parts.put("maker", maker.value());
            case Stamp.Pressed(var _, var bar) -> parts.put("amount", new BigDecimal(bar)).put("unit", "bar");
            case Stamp.Condemned _ -> parts.put("condemned", true);
            case Stamp.Rejected(var word) -> parts.put("word", word);
            case Stamp.Together(var several) -> several.forEach(parts::part);
        }
        return parts.fields;
    }

    /** One of several on a line, under the name that it has among the marks. */
    private void part(Stamp stamp) {
        switch (stamp) {
            case Stamp.Holds(var capacity) -> put("waterCapacity", capacity.toString());
            case Stamp.Weighs(var tare, var kilograms) -> put("tare", tare.toString()).put("tareStamped", kilograms(
                    kilograms));
            case Stamp.Pressed pressed -> put(pressed.test() ? "testPressure" : "workingPressure", pressed.toString());
            case Stamp.Requalified(var mark) -> marks.add(mark.toString());
            case Stamp.Design _,Stamp.OriginalTest _,Stamp.Tagged _,Stamp.Numbered _,Stamp.MadeBy _,Stamp.Condemned _,Stamp.Rejected _,Stamp.Together _ ->
                fields.putAll(of(stamp));
        }
        put("requalifications", marks.isEmpty() ? null : marks);
    }

    static @Nullable String kilograms(@Nullable BigDecimal amount) {
        return amount == null ? null : amount.toPlainString() + " kg";
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
