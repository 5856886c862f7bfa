package org.collarbook.regulation.engine;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** The rules that can concern one kind and one specification family, laid out before anything is asked. */
record Plan(Group[] groups, Rule[] gates, Rule[] densities) {

    /** The rules that set one requirement, the first to apply governing. */
    record Group(Requirement requirement, Rule[] rules) {}

    static Plan of(List<Rule> rules, ContainerKind kind, @Nullable Authority authority,
            @Nullable String family) {
        Map<Requirement, List<Rule>> clocks = new EnumMap<>(Requirement.class);
        List<Rule> gates = new ArrayList<>();
        List<Rule> densities = new ArrayList<>();
        for (Rule rule : rules) {
            if (!rule.concerns(kind, authority, family)) {
                continue;
            }
            if (rule.sets != null) {
                clocks.computeIfAbsent(rule.sets, _ -> new ArrayList<>()).add(rule);
            } else if (rule.gates != null) {
                gates.add(rule);
            } else {
                densities.add(rule);
            }
        }
        List<Group> groups = new ArrayList<>();
        clocks.forEach((requirement, those) -> {
            those.sort(Comparator.comparingInt((Rule rule) -> -rule.precedence).thenComparing(rule -> rule.id));
            groups.add(new Group(requirement, those.toArray(Rule[]::new)));
        });
        return new Plan(groups.toArray(Group[]::new), gates.toArray(Rule[]::new), densities.toArray(Rule[]::new));
    }
}
