package org.collarbook.regulation.rulebook;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Extinguisher;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Fittings;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Move;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.Policy;
import org.collarbook.regulation.Purpose;
import org.collarbook.regulation.ReliefValve;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Rin;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.Use;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** Reads the facts of an example, under the names that a request uses. */
final class FactsReader {

    private FactsReader() {}

    static Facts read(Jurisdiction jurisdiction, Fields fields) {
        FactsBuilder facts = Facts.builder().jurisdiction(jurisdiction);
        facts.kind(fields.optional("kind", "a kind", ContainerKind::valueOf));
        facts.specification(fields.optional("specification", "a specification", Specification::parse));
        facts.manufactured(fields.optional("manufactured", "a month", YearMonth::parse));
        facts.waterCapacity(fields.optional("waterCapacity", "a capacity", WaterCapacity::parse));
        facts.servicePressure(fields.optional("servicePressure", "a number", BigDecimal::new));
        facts.coated(flag(fields, "coated")).lined(flag(fields, "lined"));
        facts.steel(fields.optional("steel", "NQT or QT", Steel::valueOf));
        facts.marksLegible(flag(fields, "marksLegible")).ownerConsent(flag(fields, "ownerConsent"));
        facts.installation(fields.optional("installation", "above or below ground", Installation::valueOf));
        facts.use(fields.optional("use", "a use", Use::valueOf));
        facts.reliefValve(fields.optional("reliefValve", "INTERNAL or EXTERNAL", ReliefValve::valueOf));
        facts.extendedPeriod(fields.optional("extendedPeriod", "a longer period", ExtendedPeriod::valueOf));
        facts.extinguisher(fields.optional("extinguisher", "a kind of extinguisher", Extinguisher::valueOf));
        facts.schemeDue(fields.optional("schemeDue", "a month", YearMonth::parse));
        facts.outOfServiceSince(fields.optionalDate("outOfServiceSince")).move(move(fields));
        facts.fittings(fittings(fields));
        facts.service(
                new Service(fields.optional("lading", "a lading", Lading::new), flag(fields, "exclusive"), flag(fields,
                        "corrosionFree")));
        facts.permit(permit(fields)).condition(condition(fields));
        facts.requalifications(fields.has("requalifications") ? marks(fields) : null);
        facts.filledOn(fields.optionalDate("filledOn")).emptiedOn(fields.optionalDate("emptiedOn"));
        facts.policies(fields.choices("policies", Policy.class)).enable(Set.copyOf(fields.set("enable")));
        fields.done();
        return facts.build();
    }

    private static @Nullable Boolean flag(Fields fields, String key) {
        return fields.optional(key, "true or false", Fields::bool);
    }

    private static @Nullable Fittings fittings(Fields fields) {
        Boolean valve = flag(fields, "reliefValveFitted");
        Boolean device = flag(fields, "overfillPrevention");
        Fittings.@Nullable Label label = fields.optional("labelledFor", "a label", Fittings.Label::valueOf);
        return valve == null && device == null && label == null ? null : new Fittings(valve, device, label, null);
    }

    private static @Nullable Permit permit(Fields fields) {
        Fields permit = fields.optionalChild("permit");
        if (permit == null) {
            return null;
        }
        Permit read = new Permit(permit.optional("number"), permit.optionalDate("expires"),
                permit.optional("intervalYears",
                        "a whole number", Integer::valueOf));
        permit.done();
        return read;
    }

    private static @Nullable Move move(Fields fields) {
        Fields move = fields.optionalChild("move");
        if (move == null) {
            return null;
        }
        Move read = new Move(move.optional("percentFull", "a number", BigDecimal::new),
                move.optional("purpose", "a purpose", Purpose::valueOf));
        move.done();
        return read;
    }

    private static @Nullable Condition condition(Fields fields) {
        Fields condition = fields.optionalChild("condition");
        if (condition == null) {
            return null;
        }
        Condition read = new Condition(condition.texts("damage"), condition.optional("tareLossPercent", "a number",
                BigDecimal::new), flag(condition, "overheated"), flag(condition, "fire"),
                condition.optionalDate(
                        "rejectedOn"),
                condition.optionalDate("condemnedOn"));
        condition.done();
        return read;
    }

    private static Requalification.Result result(Fields mark) {
        Requalification.@Nullable Result result = mark.optional("result", "a result", Requalification.Result::valueOf);
        return result == null ? Requalification.Result.PASSED : result;
    }

    private static List<Requalification> marks(Fields fields) {
        List<Requalification> marks = new ArrayList<>();
        for (Fields mark : fields.children("requalifications")) {
            Rin rin = mark.optional("rin", "a RIN such as A123", Rin::parse);
            boolean star = Boolean.TRUE.equals(flag(mark, "star"));
            marks.add(
                    new Requalification(mark.month("month"), mark.optional("method", "a method", Method::valueOf), star,
                            false, rin, false, result(mark)));
            mark.done();
        }
        return marks;
    }
}
