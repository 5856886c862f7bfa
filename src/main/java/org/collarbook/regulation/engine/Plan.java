package org.collarbook.regulation.engine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** The rules that can concern one kind, authority and family, laid out before anything is asked, and again by lading. */
final class Plan {

    static final Group NO_GROUP = new Group(Requirement.SHELL, new Rule[0]);
    static final Plan NO_RULES = new Plan(List.of(), null, false);
    private static final Lading NO_LADING_NAMED = new Lading("OTHER_THAN_NAMED");

    final Group[] groups;
    /** A specification of the family that the plan is for, or null where it is for several. */
    private final @Nullable Specification like;
    final Rule[] gates;
    /** By stretch, each made when it is first asked for; a race makes two that are equal. */
    private @Nullable Questions[] questions = new Questions[0];
    final Rule[] densities;
    final Rule[] reliefs;
    final Rule[] notes;
    /** The months after manufacture that end a service life, and those after which a stop counts. */
    final int[] lives;
    final int[] stops;
    private final Map<ReasonCode, Rule> cites = new EnumMap<>(ReasonCode.class);
    private final Map<String, Plan> byLading;
    private final Plan other;

    /** The rules that set one requirement, the first to apply governing. */
    record Group(Requirement requirement, Rule[] rules) {}

    private Plan(List<Rule> rules, @Nullable Specification like, boolean split) {
        this.like = like;
        groups = groups(rules);
        gates = those(rules, rule -> rule.part instanceof Part.Asks);
        densities = those(rules, rule -> rule.part instanceof Part.Limits);
        reliefs = those(rules, rule -> rule.part instanceof Part.Relieves);
        notes = those(rules, rule -> rule.part instanceof Part.Notes);
        lives = months(rules, Plan::life);
        stops = months(rules, Plan::stop);
        for (Rule rule : rules) {
            if (rule.part instanceof Part.Cites(Set<ReasonCode> codes)) {
                codes.forEach(code -> cites.put(code, rule));
            }
        }
        Set<String> named = split
                ? rules.stream().flatMap(rule -> rule.head.scope().ladings().stream()).collect(Collectors.toSet())
                : Set.of();
        byLading = named.stream().collect(Collectors.toMap(String::intern,
                name -> new Plan(only(rules, new Lading(name)), like, false)));
        other = named.isEmpty() ? this : new Plan(only(rules, NO_LADING_NAMED), like, false);
    }

    private static int[] months(List<Rule> rules, ToIntFunction<Effect> of) {
        return rules.stream().flatMap(rule -> Arrays.stream(rule.values)).mapToInt(value -> of.applyAsInt(value.effect))
                .filter(months -> months > 0).distinct().sorted().toArray();
    }

    private static int life(Effect effect) {
        return effect instanceof Effect.ServiceLife(int months) ? months : 0;
    }

    private static int stop(Effect effect) {
        return effect instanceof Effect.Gate gate
                ? Arrays.stream(gate.requires()).mapToInt(test -> test.stopsAfter()).max().orElse(0)
                : 0;
    }

    private static Rule[] those(List<Rule> rules, Predicate<Rule> of) {
        return rules.stream().filter(of).toArray(Rule[]::new);
    }

    private static Group[] groups(List<Rule> rules) {
        Map<Requirement, List<Rule>> clocks = new EnumMap<>(Requirement.class);
        for (Rule rule : rules) {
            if (rule.part instanceof Part.Sets sets) {
                clocks.computeIfAbsent(sets.requirement(), _ -> new ArrayList<>()).add(rule);
            }
        }
        List<Group> ordered = new ArrayList<>();
        clocks.forEach((requirement, those) -> {
            those.sort(Comparator.comparingInt((Rule rule) -> -rule.head.precedence()).thenComparing(rule -> rule.id));
            ordered.add(new Group(requirement, those.toArray(Rule[]::new)));
        });
        return ordered.toArray(Group[]::new);
    }

    static Plan of(List<Rule> rules, ContainerKind kind, @Nullable Authority authority, @Nullable String family) {
        return new Plan(rules.stream().filter(rule -> rule.head.scope().covers(kind, authority, family)).toList(),
                authority == null || family == null ? null : Specification.like(authority, family), true);
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

    Questions questions(Subject subject) {
        int stretch = subject.stretch;
        @Nullable
        Questions[] known = questions;
        if (known.length <= stretch) {
            known = Arrays.copyOf(known, stretch + 1);
            questions = known;
        }
        Questions there = known[stretch];
        if (there == null) {
            there = Questions.of(gates, like, stretch, subject.asOf);
            known[stretch] = there;
        }
        return there;
    }

    boolean relieves(Part.Relief relief) {
        for (Rule rule : reliefs) {
            if (rule.part instanceof Part.Relieves(var which, var _) && which == relief) {
                return true;
            }
        }
        return false;
    }

    boolean cites(ReasonCode code) {
        return cites.containsKey(code);
    }

    /** The reason with where it stands, when the rules say so. */
    Reason cited(ReasonCode code, Subject subject) {
        Rule rule = cites.get(code);
        Value value = rule == null ? null : rule.valueFor(subject, subject.stretch);
        return value == null ? code.reason() : value.citing(code);
    }
}
