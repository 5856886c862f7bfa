package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** One rule, ready to be applied. It either sets a requirement's clock, or gates permissions, or limits a fill. */
public final class Rule {

    /** The questions that must each be answered before anything may be filled. */
    public enum Topic {
        REFILLABLE,
        AUTHORISED,
        SERVICE_PRESSURE,
        MARKS,
        CONSENT,
        CONDITION
    }

    public enum Selector {
        EVALUATION,
        MANUFACTURE,
        LAST_TEST
    }

    public enum Allows {
        FILL,
        CARRY,
        USE
    }

    final String id;
    final String title;
    final Jurisdiction jurisdiction;
    final @Nullable Requirement sets;
    final @Nullable Topic gates;
    final Set<Allows> forbids;
    final int precedence;
    final Selector selector;
    final Set<ContainerKind> kinds;
    final Set<String> families;
    final Test[] tests;
    final Value[] values;
    final Set<Fact> factsUsed;
    final Set<Fact> factsUsedAtFirst;

    public Rule(String id, String title, Jurisdiction jurisdiction, @Nullable Requirement sets, @Nullable Topic gates,
            Set<Allows> forbids, int precedence, Selector selector, Set<ContainerKind> kinds, Set<String> families,
            List<Test> tests, List<Value> values) {
        this.id = id;
        this.title = title;
        this.jurisdiction = jurisdiction;
        this.sets = sets;
        this.gates = gates;
        this.forbids = forbids;
        this.precedence = precedence;
        this.selector = selector;
        this.kinds = kinds;
        this.families = families;
        this.tests = tests.toArray(Test[]::new);
        this.values = values.toArray(Value[]::new);
        EnumSet<Fact> used = EnumSet.of(Fact.JURISDICTION, Fact.KIND, Fact.SPECIFICATION);
        tests.forEach(test -> used.add(test.fact()));
        if (sets != null && sets.hasHistory()) {
            used.add(Fact.REQUALIFICATIONS);
        }
        this.factsUsed = Set.copyOf(used);
        used.add(Fact.MANUFACTURED);
        this.factsUsedAtFirst = Set.copyOf(used);
    }

    boolean concerns(ContainerKind kind, @Nullable String family) {
        return kinds.contains(kind) && (families.isEmpty() || family != null && families.contains(family));
    }

    /** A value that a policy brings goes before the text, once the caller asks for the policy. */
    @Nullable
    Value valueFor(Subject subject, LocalDate day) {
        LocalDate date = switch (selector) {
            case EVALUATION -> day;
            case MANUFACTURE -> subject.manufactured == null ? day : subject.manufactured.atDay(1);
            case LAST_TEST -> subject.mark == null ? day : subject.mark.month().atDay(1);
        };
        return select(subject.facts, date);
    }

    private @Nullable Value select(Facts facts, LocalDate date) {
        Value text = null;
        for (Value value : values) {
            if (!value.inForceOn(date)) {
                continue;
            }
            if (value.policy == null) {
                text = value;
            } else if (facts.policies().contains(value.policy)) {
                return value;
            }
        }
        return text;
    }

    static Verdict all(Test[] tests, Subject subject) {
        Verdict verdict = Verdict.YES;
        for (Test test : tests) {
            switch (test.check().on(subject)) {
                case NO -> {
                    return Verdict.NO;
                }
                case UNKNOWN -> verdict = Verdict.UNKNOWN;
                case YES -> {
                }
            }
        }
        return verdict;
    }
}
