package org.collarbook.regulation.engine;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** The plans of one kind of container: by the authority and family that are stamped, and for none known. */
record Plans(Plan unknown, boolean bySpecification, Map<Authority, Plan> others,
        Map<Authority, Map<String, Plan>> named) {

    static Plans of(List<Rule> rules, ContainerKind kind) {
        Map<Authority, Plan> others = new EnumMap<>(Authority.class);
        Map<Authority, Map<String, Plan>> named = new EnumMap<>(Authority.class);
        List<String> families = rules.stream().flatMap(rule -> rule.head.scope().families().stream()).distinct()
                .map(String::intern).toList();
        for (Authority authority : Authority.values()) {
            others.put(authority, Plan.of(rules, kind, authority, null));
            Map<String, Plan> byFamily = new HashMap<>();
            families.forEach(family -> byFamily.put(family, Plan.of(rules, kind, authority, family)));
            // kept as it is: the probing of an immutable map divides, which shows in the rate of assessments
            named.put(authority, byFamily);
        }
        boolean bySpecification = rules.stream().anyMatch(rule -> rule.part instanceof Part.Sets
                && rule.head.scope().kinds().contains(kind) && rule.head.scope().readsTheSpecification());
        return new Plans(Plan.of(rules, kind, null, null), bySpecification, others, named);
    }

    Plan plan(Facts facts) {
        return plan(facts.specification()).knowing(facts.service().lading());
    }

    private Plan plan(@Nullable Specification specification) {
        if (specification == null) {
            return unknown;
        }
        Plan plan = named.get(specification.authority()).get(specification.family());
        return plan == null ? others.get(specification.authority()) : plan;
    }
}
