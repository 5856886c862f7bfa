package org.collarbook.regulation.engine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** The rules that can concern one kind, authority and family, laid out before anything is asked, and again by lading. */
final class Plan {

    private static final Lading NO_LADING_NAMED = new Lading("OTHER_THAN_NAMED");

    final Group[] groups;
    final Rule[] gates;
    final Rule[] densities;
    private final Map<String, Plan> byLading = new HashMap<>();
    private final Plan other;

    /** The rules that set one requirement, the first to apply governing. */
    record Group(Requirement requirement, Rule[] rules) {}

    private Plan(List<Rule> rules, boolean split) {
        groups = groups(rules);
        gates = rules.stream().filter(rule -> rule.gates != null).toArray(Rule[]::new);
        densities = rules.stream().filter(rule -> rule.sets == null && rule.gates == null).toArray(Rule[]::new);
        Set<String> named = split
                ? rules.stream().flatMap(rule -> rule.ladings.stream()).collect(Collectors.toSet())
                : Set.of();
        named.forEach(name -> byLading.put(name, new Plan(only(rules, new Lading(name)), false)));
        other = named.isEmpty() ? this : new Plan(only(rules, NO_LADING_NAMED), false);
    }

    private static Group[] groups(List<Rule> rules) {
        Map<Requirement, List<Rule>> clocks = new EnumMap<>(Requirement.class);
        for (Rule rule : rules) {
            if (rule.sets != null) {
                clocks.computeIfAbsent(rule.sets, _ -> new ArrayList<>()).add(rule);
            }
        }
        List<Group> ordered = new ArrayList<>();
        clocks.forEach((requirement, those) -> {
            those.sort(Comparator.comparingInt((Rule rule) -> -rule.precedence).thenComparing(rule -> rule.id));
            ordered.add(new Group(requirement, those.toArray(Rule[]::new)));
        });
        return ordered.toArray(Group[]::new);
    }

    static Plan of(List<Rule> rules, ContainerKind kind, @Nullable Authority authority, @Nullable String family) {
        return new Plan(rules.stream().filter(rule -> rule.concerns(kind, authority, family)).toList(), true);
    }

    private static List<Rule> only(List<Rule> rules, Lading lading) {
        return rules.stream().map(rule -> rule.knowing(lading)).filter(Objects::nonNull).toList();
    }

    /** The same rules without those that this lading rules out, and without the question which lading it is. */
    Plan knowing(@Nullable Lading lading) {
        if (lading == null || byLading.isEmpty()) {
            return this;
        }
        Plan plan = byLading.get(lading.name());
        return plan == null ? other : plan;
    }
}
