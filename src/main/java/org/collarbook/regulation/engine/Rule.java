package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Service;
import org.jspecify.annotations.Nullable;

/** One rule, ready to be applied. */
public final class Rule {

    /** Which date chooses among the values. */
    public enum Selector {
        EVALUATION,
        MANUFACTURE,
        LAST_TEST
    }

    public record Head(String id, String title, Jurisdiction jurisdiction, int precedence, Selector selector,
            Scope scope) {}

    /** What is stamped and held: no family or no authority means any; ladings are those that the conditions name. */
    public record Scope(Set<ContainerKind> kinds, Set<String> families, Set<Authority> authorities,
            Set<String> ladings) {

        boolean covers(ContainerKind kind, @Nullable Authority authority, @Nullable String family) {
            return kinds.contains(kind) && (families.isEmpty() || family != null && families.contains(family))
                    && (authorities.isEmpty() || authority != null && authorities.contains(authority));
        }

        boolean readsTheSpecification() {
            return !families.isEmpty() || !authorities.isEmpty();
        }
    }

    final Head head;
    final String id;
    final Part part;
    final Test[] tests;
    private final boolean byEvaluation;
    final Value[] values;
    private @Nullable Value[] text = {};
    private Value @Nullable [][] byPolicy = {};
    final Set<Fact> factsUsed;
    final Set<Fact> factsUsedAtFirst;

    public Rule(Head head, Part part, List<Test> tests, List<Value> values) {
        this.head = head;
        this.id = head.id();
        this.part = part;
        this.byEvaluation = head.selector() == Selector.EVALUATION;
        this.tests = tests.toArray(Test[]::new);
        this.values = values.toArray(Value[]::new);
        if (part instanceof Part.Sets sets) {
            values.forEach(value -> value.about(sets.requirement()));
        }
        EnumSet<Fact> used = EnumSet.of(Fact.JURISDICTION, Fact.KIND);
        if (head.scope().readsTheSpecification()) {
            used.add(Fact.SPECIFICATION);
        }
        tests.forEach(test -> used.add(test.fact()));
        if (part instanceof Part.Sets sets && sets.requirement().hasHistory()) {
            used.add(Fact.REQUALIFICATIONS);
        }
        this.factsUsed = Set.copyOf(used);
        used.add(Fact.MANUFACTURED);
        this.factsUsedAtFirst = Set.copyOf(used);
    }

    private Rule(Rule rule, Test[] tests) {
        this.head = rule.head;
        this.id = rule.id;
        this.part = rule.part;
        this.byEvaluation = rule.byEvaluation;
        this.tests = tests;
        this.values = rule.values;
        this.text = rule.text;
        this.byPolicy = rule.byPolicy;
        this.factsUsed = rule.factsUsed;
        this.factsUsedAtFirst = rule.factsUsedAtFirst;
    }

    /** This rule for a known lading, or null where the lading rules it out; a condition on the lading reads nothing else. */
    @Nullable
    Rule knowing(Lading lading) {
        Subject with = new Subject(Facts.builder().service(new Service(lading, null, null)).build(), LocalDate.EPOCH,
                new Timeline(new LocalDate[0]));
        List<Test> left = new ArrayList<>();
        for (Test test : tests) {
            if (test.fact() != Fact.LADING) {
                left.add(test);
            } else if (test.check().on(with) == Verdict.NO) {
                return null;
            }
        }
        return left.size() == tests.length ? this : new Rule(this, left.toArray(Test[]::new));
    }

    /** Looks the values up once for each stretch of time between two days on which anything in the book switches. */
    void layOut(LocalDate[] switches) {
        text = new Value[switches.length + 1];
        byPolicy = new Value[switches.length + 1][];
        for (int i = 0; i < switches.length; i++) {
            LocalDate day = switches[i];
            List<Value> asked = new ArrayList<>();
            for (Value value : values) {
                if (value.inForceOn(day) && value.policy == null) {
                    text[i + 1] = value;
                } else if (value.inForceOn(day)) {
                    asked.add(value);
                }
            }
            byPolicy[i + 1] = asked.isEmpty() ? null : asked.toArray(Value[]::new);
        }
    }

    /** A value that a policy brings goes before the text, once the caller asks for the policy. */
    @Nullable
    Value valueFor(Subject subject, int stretch) {
        if (byEvaluation) {
            return select(subject.facts, stretch);
        }
        return switch (head.selector()) {
            case EVALUATION -> select(subject.facts, stretch);
            case MANUFACTURE -> select(subject.facts, subject.manufactured == null
                    ? stretch
                    : subject.timeline.stretchOf(subject.manufactured.atDay(1)));
            case LAST_TEST -> select(subject.facts, subject.mark() == null
                    ? stretch
                    : subject.timeline.stretchOf(subject.mark().month().atDay(1)));
        };
    }

    private @Nullable Value select(Facts facts, int stretch) {
        Value[] asked = byPolicy[stretch];
        if (asked != null) {
            for (Value value : asked) {
                if (facts.policies().contains(value.policy)) {
                    return value;
                }
            }
        }
        return text[stretch];
    }

    /** The text in force in a stretch, whatever policy a caller asks for. */
    @Nullable
    Value textIn(int stretch) {
        return text[stretch];
    }

    static Verdict all(Test[] tests, Subject subject) {
        Verdict all = Verdict.YES;
        for (Test test : tests) {
            Verdict one = test.check().on(subject);
            if (one == Verdict.NO) {
                return Verdict.NO;
            }
            if (one == Verdict.UNKNOWN) {
                all = Verdict.UNKNOWN;
            }
        }
        return all;
    }
}
