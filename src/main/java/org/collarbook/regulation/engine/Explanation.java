package org.collarbook.regulation.engine;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Considered;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.engine.Part.Relief;
import org.jspecify.annotations.Nullable;

/** Tells of every rule of the jurisdictions asked what became of it, by the same conditions that decided. */
record Explanation(Subject subject, Assessment assessment) {

    List<Considered> of(List<Rule> rules) {
        Jurisdiction where = subject.facts.jurisdiction();
        Jurisdiction second = Regimes.second(subject.facts);
        List<Considered> all = new ArrayList<>(under(rules.stream()
                .filter(rule -> where != null && where.isWithin(rule.head.jurisdiction())).toList(), true));
        all.addAll(under(rules.stream().filter(rule -> rule.head.jurisdiction().equals(second)).toList(), false));
        return List.copyOf(all);
    }

    private List<Considered> under(List<Rule> rules, boolean ofThePlace) {
        Map<Requirement, Reading> readings = readings(rules);
        return rules.stream().map(rule -> consider(rule, readings, ofThePlace)).toList();
    }

    /** What each clock read, with the mark it read, where the assessment has its answer from it. */
    private Map<Requirement, Reading> readings(List<Rule> rules) {
        Map<Requirement, Reading> readings = new EnumMap<>(Requirement.class);
        ContainerKind kind = subject.facts.kind();
        Specification specification = subject.facts.specification();
        Plan plan = kind == null
                ? Plan.NO_RULES
                : Plan.of(rules, kind, specification == null ? null : specification.authority(),
                        specification == null ? null : specification.family());
        for (Plan.Group group : plan.groups) {
            Reading reading = Clocks.read(group, subject, subject.asOf);
            if (isInTheAssessment(reading)) {
                readings.put(group.requirement(), reading);
            }
        }
        return readings;
    }

    private boolean isInTheAssessment(Reading reading) {
        Rule rule = reading.rule();
        return rule != null && assessment.requirements().stream()
                .anyMatch(clock -> clock.requirement() == reading.requirement() && rule.id.equals(clock.ruleId()));
    }

    private Considered consider(Rule rule, Map<Requirement, Reading> readings, boolean ofThePlace) {
        Requirement about = switch (rule.part) {
            case Part.Sets sets -> sets.requirement();
            case Part.Notes notes -> notes.about();
            case Part.Asks _,Part.Relieves _,Part.Cites _,Part.Limits _,Part.Expects _ -> null;
        };
        Reading reading = about == null ? null : readings.get(about);
        subject.judging(reading != null ? reading.mark() : about == null ? null : newest(about));
        Value value = rule.valueFor(subject, subject.stretch);
        Answers answers = Answers.of(rule, value, subject);
        Considered.Verdict verdict = verdict(rule, value, answers.scope());
        if (verdict == Considered.Verdict.GOVERNS && value != null) {
            verdict = rule.part instanceof Part.Sets ? clocked(rule, reading) : asked(rule, value, ofThePlace);
        }
        return new Considered(rule.id, rule.head.title(), rule.head.jurisdiction(), rule.part.topic(), verdict,
                value == null ? null : value.effect.shown(), answers.told(verdict),
                value == null ? null : value.citation);
    }

    /** As far as the rule's own conditions go. */
    private Considered.Verdict verdict(Rule rule, @Nullable Value value, Verdict scope) {
        if (scope == Verdict.NO) {
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
            case YES -> scope == Verdict.UNKNOWN
                    ? Considered.Verdict.CANNOT_TELL
                    : value.isOn(subject.facts, rule.id)
                            ? Considered.Verdict.GOVERNS
                            : Considered.Verdict.SWITCHED_OFF;
        };
    }

    /** No rule answers while the specification is unknown or the history contradicts itself. */
    private static Considered.Verdict clocked(Rule rule, @Nullable Reading reading) {
        Rule first = reading == null ? null : reading.rule();
        return first == null
                ? Considered.Verdict.CANNOT_TELL
                : first.id.equals(rule.id) ? Considered.Verdict.GOVERNS : Considered.Verdict.OUTRANKED;
    }

    private Considered.Verdict asked(Rule rule, Value value, boolean ofThePlace) {
        boolean asked = switch (rule.part) {
            case Part.Sets _,Part.Asks _ -> true;
            case Part.Limits _ -> ofThePlace;
            // what a site is asked to have is no matter of one container
            case Part.Expects _ -> false;
            case Part.Relieves(Relief relief, var _) -> switch (relief) {
                case FILLED_IN_TIME -> gives(ReasonCode.USE_UP, value.citation);
                case OVERDUE -> gives(ReasonCode.STILL_ALLOWED, value.citation);
                case MOVE -> ofThePlace && subject.facts.kind() == ContainerKind.STATIONARY_TANK;
            };
            case Part.Notes notes -> gives(notes.code(), value.citation);
            case Part.Cites cites -> cites.codes().stream().anyMatch(code -> gives(code, value.citation));
        };
        return asked ? Considered.Verdict.GOVERNS : Considered.Verdict.NOT_ASKED;
    }

    private boolean gives(ReasonCode code, Citation citation) {
        return assessment.reasons().stream()
                .anyMatch(reason -> reason.code() == code && citation.equals(reason.citation()));
    }

    private @Nullable Requalification newest(Requirement requirement) {
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
