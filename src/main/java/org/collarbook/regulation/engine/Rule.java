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
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Service;
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
    final Set<Authority> authorities;
    /** The ladings that its conditions name. */
    final Set<String> ladings;
    final Test[] tests;
    final Value[] values;
    private @Nullable Value[] text = {};
    private Value @Nullable [][] byPolicy = {};
    final Set<Fact> factsUsed;
    final Set<Fact> factsUsedAtFirst;

    public Rule(String id, String title, Jurisdiction jurisdiction, @Nullable Requirement sets, @Nullable Topic gates,
            Set<Allows> forbids, int precedence, Selector selector, Set<ContainerKind> kinds, Set<String> families,
            Set<Authority> authorities, Set<String> ladings,
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
        this.authorities = authorities;
        this.ladings = ladings;
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

    boolean concerns(ContainerKind kind, @Nullable Authority authority, @Nullable String family) {
        return kinds.contains(kind) && (families.isEmpty() || family != null && families.contains(family))
                && (authorities
                        .isEmpty() || authority != null && authorities.contains(authority));
    }

    private Rule(Rule rule, Test[] tests) {
        this.id = rule.id;
        this.title = rule.title;
        this.jurisdiction = rule.jurisdiction;
        this.sets = rule.sets;
        this.gates = rule.gates;
        this.forbids = rule.forbids;
        this.precedence = rule.precedence;
        this.selector = rule.selector;
        this.kinds = rule.kinds;
        this.families = rule.families;
        this.authorities = rule.authorities;
        this.ladings = rule.ladings;
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
        if (selector == Selector.EVALUATION) {
            return select(subject.facts, stretch);
        }
        return switch (selector) {
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
