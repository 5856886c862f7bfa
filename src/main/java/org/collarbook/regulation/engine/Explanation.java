package org.collarbook.regulation.engine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Considered;
import org.collarbook.regulation.Considered.Answer;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** Tells of every rule of the jurisdictions asked what became of it, by the same conditions that decided. */
record Explanation(Subject subject, Assessment assessment) {

    List<Considered> of(List<Rule> rules) {
        Jurisdiction where = subject.facts.jurisdiction();
        Jurisdiction second = Regimes.second(subject.facts);
        return rules.stream().filter(rule -> where != null && where.isWithin(rule.head.jurisdiction())
                || second != null && second.equals(rule.head.jurisdiction())).map(this::consider).toList();
    }

    private Considered consider(Rule rule) {
        subject.judging(rule.part instanceof Part.Sets sets ? governing(sets.requirement()) : null);
        Value value = rule.valueFor(subject, subject.stretch);
        Considered.Verdict verdict = verdict(rule, value);
        List<Considered.Condition> conditions = new ArrayList<>();
        if (verdict != Considered.Verdict.OF_OTHER_CONTAINERS) {
            Stream.concat(Arrays.stream(rule.tests), value != null && value.effect instanceof Effect.Gate gate
                    ? Arrays.stream(gate.requires())
                    : Stream.empty()).forEach(
                            test -> conditions.add(new Considered.Condition(test.condition(), test.fact().field(),
                                    Answer.valueOf(test.check().on(subject).name()))));
        }
        return new Considered(rule.id, rule.head.title(), rule.head.jurisdiction(), rule.part.topic(), verdict,
                value == null ? null : value.effect.shown(), List.copyOf(conditions),
                value == null ? null : value.citation);
    }

    private Considered.Verdict verdict(Rule rule, @Nullable Value value) {
        if (!covers(rule.head.scope())) {
            return Considered.Verdict.OF_OTHER_CONTAINERS;
        }
        if (value == null) {
            return Considered.Verdict.NOT_IN_FORCE;
        }
        if (rule.part instanceof Part.Sets && !Clocks.speaksOf(rule, value, subject)) {
            return Considered.Verdict.OF_OTHER_METHODS;
        }
        return switch (Clocks.verdict(rule, value, subject, subject.asOf)) {
            case NO -> Considered.Verdict.DOES_NOT_APPLY;
            case UNKNOWN -> Considered.Verdict.CANNOT_TELL;
            case YES -> !value.isOn(subject.facts, rule.id)
                    ? Considered.Verdict.SWITCHED_OFF
                    : governs(rule) ? Considered.Verdict.GOVERNS : Considered.Verdict.OUTRANKED;
        };
    }

    private boolean covers(Rule.Scope scope) {
        Facts facts = subject.facts;
        ContainerKind kind = facts.kind();
        Specification specification = facts.specification();
        return kind != null && scope.covers(kind, specification == null ? null : specification.authority(),
                specification == null ? null : specification.family());
    }

    private boolean governs(Rule rule) {
        return !(rule.part instanceof Part.Sets) || assessment.requirements().stream().anyMatch(clock -> rule.id.equals(
                clock.ruleId()));
    }

    /** The newest mark of a requirement; of several in one month, one that a rule of it accepts. */
    private @Nullable Requalification governing(Requirement requirement) {
        Requalification newest = null;
        List<Requalification> history = subject.facts.requalifications();
        for (Requalification one : history == null ? List.<Requalification>of() : history) {
            if (Subject.belongs(requirement, one) && subject.counts(one, subject.asOf)
                    && (newest == null || one.month().isAfter(newest.month()))) {
                newest = one;
            }
        }
        return newest;
    }
}
