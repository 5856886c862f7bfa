package org.collarbook.regulation;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;

/**
 * The same container with one fact less, under the name of that fact. An event that is not recorded (a fill, a
 * rejection) is no unknown fact.
 */
final class Blurred {

    private static final Map<String, UnaryOperator<FactsBuilder>> WITHOUT = new HashMap<>();

    static {
        WITHOUT.put("jurisdiction", facts -> facts.jurisdiction(null));
        WITHOUT.put("kind", facts -> facts.kind(null));
        WITHOUT.put("specification", facts -> facts.specification(null));
        WITHOUT.put("manufactured", facts -> facts.manufactured(null));
        WITHOUT.put("waterCapacity", facts -> facts.waterCapacity(null));
        WITHOUT.put("servicePressure", facts -> facts.servicePressure(null));
        WITHOUT.put("coated", facts -> facts.coated(null));
        WITHOUT.put("lined", facts -> facts.lined(null));
        WITHOUT.put("steel", facts -> facts.steel(null));
        WITHOUT.put("marksLegible", facts -> facts.marksLegible(null));
        WITHOUT.put("ownerConsent", facts -> facts.ownerConsent(null));
        WITHOUT.put("use", facts -> facts.use(null));
        WITHOUT.put("reliefValve", facts -> facts.reliefValve(null));
        WITHOUT.put("installation", facts -> facts.installation(null));
        WITHOUT.put("move", facts -> facts.move(null));
        WITHOUT.put("history", facts -> facts.requalifications(null));
        WITHOUT.put("condition", facts -> facts.condition(null));
        WITHOUT.put("holds", facts -> facts.holds(null));
    }

    private Blurred() {}

    static Map<String, Facts> each(Facts facts) {
        Map<String, Facts> blurred = new HashMap<>();
        WITHOUT.forEach((name, without) -> blurred.put(name, without.apply(facts.toBuilder()).build()));
        Service service = facts.service();
        blurred.put("lading", facts.toBuilder().service(new Service(null, service.exclusive(), service.corrosionFree()))
                .build());
        blurred.put("exclusive", facts.toBuilder().service(new Service(service.lading(), null, service.corrosionFree()))
                .build());
        blurred.put("corrosionFree", facts.toBuilder().service(new Service(service.lading(), service.exclusive(), null))
                .build());
        if (isMoreThanCanBe(facts)) {
            // a capacity that is disbelieved tells less than none
            blurred.remove("waterCapacity");
        }
        parts(facts, blurred);
        marks(facts, blurred);
        return blurred;
    }

    /** 49 CFR 178.50(a), .51(a), .61(a) and .68(a): 1,000 lb of water, nominal. */
    private static boolean isMoreThanCanBe(Facts facts) {
        WaterCapacity capacity = facts.waterCapacity();
        Specification stamped = facts.specification();
        return capacity != null && stamped != null && facts.kind() == ContainerKind.CYLINDER
                && Set.of("4B", "4BA", "4BW", "4E").contains(stamped.family())
                && capacity.toPounds().compareTo(new BigDecimal(1050)) > 0;
    }

    /** A part of a permit, of a move, of what is stamped; where another fact tells the same, nothing is unknown, and a loss is an event. */
    private static void parts(Facts facts, Map<String, Facts> blurred) {
        Specification stamped = facts.specification();
        boolean stampTells = stamped != null && ExtendedPeriod.P15Y.name().equals(stamped.detail());
        if (!stampTells && facts.extendedPeriod() != ExtendedPeriod.NONE) {
            blurred.put("extendedPeriod", facts.toBuilder().extendedPeriod(null).build());
        }
        if (stamped == null || stamped.detail() != null) {
            // beside a specification no permit on record is none, as no longer period is
            blurred.put("permit", facts.toBuilder().permit(null).build());
        }
        Fittings fittings = facts.fittings();
        if (fittings != null) {
            blurred.put("overfillPrevention", facts.toBuilder().fittings(new Fittings(fittings.reliefValve(), null,
                    fittings.label(), fittings.since())).build());
            blurred.put("labelledFor", facts.toBuilder().fittings(new Fittings(fittings.reliefValve(),
                    fittings.overfillPrevention(), null, fittings.since())).build());
        }
        Permit permit = facts.permit();
        if (permit != null) {
            blurred.put("permit.number", facts.toBuilder()
                    .permit(new Permit(null, permit.expires(), permit.intervalYears())).build());
            blurred.put("permit.expires", facts.toBuilder()
                    .permit(new Permit(permit.number(), null, permit.intervalYears())).build());
            blurred.put("permit.intervalYears", facts.toBuilder()
                    .permit(new Permit(permit.number(), permit.expires(), null)).build());
        }
        Move move = facts.move();
        if (move != null) {
            blurred.put("move.percentFull", facts.toBuilder().move(new Move(null, move.purpose())).build());
            blurred.put("move.purpose", facts.toBuilder().move(new Move(move.percentFull(), null)).build());
        }
        if (stamped != null && facts.servicePressure() == null) {
            blurred.put("specification.pressure", facts.toBuilder().specification(new Specification(stamped.authority(),
                    stamped.family(), stamped.detail(), null, stamped.alsoMarked())).build());
        }
        if (stamped != null && facts.steel() == null) {
            blurred.put("specification.detail", facts.toBuilder().specification(new Specification(stamped.authority(),
                    stamped.family(), null, stamped.pressure(), stamped.alsoMarked())).build());
        }
    }

    private static void marks(Facts facts, Map<String, Facts> blurred) {
        List<Requalification> history = facts.requalifications();
        for (int i = 0; history != null && i < history.size(); i++) {
            Method method = history.get(i).method();
            boolean american = facts.jurisdiction() == null || facts.jurisdiction().isWithin(Jurisdiction.US);
            if (method != null && method.compareTo(Method.INTERMEDIATE) <= 0
                    && (american || method.isWholeInspection())) {
                // what was done to a part is no stamp that can lose its suffix; outside the US a mark has none
                blurred.put("method " + i, with(facts, history, i, true));
            }
            blurred.put("RIN " + i, with(facts, history, i, false));
        }
    }

    private static Facts with(Facts facts, List<Requalification> history, int i, boolean noMethod) {
        List<Requalification> less = new ArrayList<>(history);
        Requalification one = history.get(i);
        less.set(i, new Requalification(one.month(), noMethod ? null : one.method(), one.star(), one.plus(),
                noMethod ? one.rin() : null, one.rinSeen(), one.result()));
        return facts.toBuilder().requalifications(less).build();
    }
}
