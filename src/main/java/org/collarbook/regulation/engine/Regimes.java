package org.collarbook.regulation.engine;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/**
 * Whose rules answer for a container: those of the place asked about, a province's with its country's, and for a mark of
 * another country's authority that country's too.
 */
final class Regimes {

    private final Map<String, Map<ContainerKind, Plans>> plans = new HashMap<>();
    private final Map<ContainerKind, Plans> us;

    Regimes(List<Rule> rules) {
        rules.stream().map(rule -> rule.head.jurisdiction()).distinct().forEach(where -> {
            List<Rule> there = rules.stream().filter(rule -> where.isWithin(rule.head.jurisdiction())).toList();
            Map<ContainerKind, Plans> byKind = new EnumMap<>(ContainerKind.class);
            for (ContainerKind kind : ContainerKind.values()) {
                byKind.put(kind, Plans.of(there, kind));
            }
            plans.put(where.code(), byKind);
        });
        us = plans.getOrDefault(Jurisdiction.US.code(), Map.of());
    }

    /** Null where no rule of the place is held, or the kind is not known. */
    @Nullable
    Plans of(Facts facts, @Nullable Jurisdiction where) {
        ContainerKind kind = facts.kind();
        if (where == null || kind == null) {
            return null;
        }
        Map<ContainerKind, Plans> there = where == Jurisdiction.US ? us : plans.get(where.code());
        there = there == null ? plans.get(where.country().code()) : there;
        return there == null ? null : there.get(kind);
    }

    boolean askForTheSpecification(Facts facts, @Nullable Jurisdiction where) {
        Plans there = of(facts, where);
        return there != null && there.bySpecification();
    }

    /** Where the authority of the mark makes the rules, when that is not the place asked about. */
    static @Nullable Jurisdiction second(Facts facts) {
        Specification specification = facts.specification();
        Jurisdiction where = facts.jurisdiction();
        if (specification == null || where == null || where.isWithin(Jurisdiction.US)) {
            return null;
        }
        return switch (specification.authority()) {
            case DOT, ICC, SPECIAL_PERMIT -> Jurisdiction.US;
            case CRC, BTC, CTC, TC, UN, ADR, ASME -> null;
        };
    }

    /** Outside the US a container whose mark is not known may bear one of the DOT, which would ask for its own date too. */
    static boolean mayBeMarkedElsewhere(Facts facts) {
        ContainerKind kind = facts.kind();
        Jurisdiction where = facts.jurisdiction();
        return facts.specification() == null && where != null && !where.isWithin(Jurisdiction.US)
                && (kind == ContainerKind.CYLINDER || kind == ContainerKind.CARGO_TANK
                        || kind == ContainerKind.PORTABLE_TANK);
    }
}
