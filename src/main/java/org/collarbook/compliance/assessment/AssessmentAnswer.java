package org.collarbook.compliance.assessment;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

import org.collarbook.compliance.Declared;
import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.RuleBookAnswer;
import org.collarbook.platform.Caution;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Permission;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/** What the rules say; a field that does not apply is absent, and so is an explanation that was not asked for. */
public record AssessmentAnswer(LocalDate asOf, Status status, boolean mayFill, boolean mayCarry, boolean mayCarryEmpty,
        boolean mayUse, List<RequirementAnswer> requirements, Map<String, PermissionAnswer> permissions,
        List<Reason> reasons, @Nullable List<ConsideredAnswer> explanation, RuleBookAnswer ruleBook,
        @Nullable Replayed replayed, @Nullable List<Declared> declared, String caution) {

    /**
     * The moment of whose knowledge the answer is, and the evaluator that answered then; {@code sameEvaluator} is false
     * where another version answers now, which may read the same book otherwise.
     */
    public record Replayed(Instant knownAt, String evaluatorThen, boolean sameEvaluator) {}

    public record PermissionAnswer(boolean allowed, List<ReasonCode> reasons) {

        static PermissionAnswer from(Permission permission) {
            return new PermissionAnswer(permission.allowed(), permission.reasons().stream().map(Reason::code).distinct()
                    .toList());
        }
    }

    /** {@code missing} is told by an undetermined outcome, {@code authority} by another authority's. */
    public record RequirementAnswer(Requirement requirement, @Nullable String jurisdiction, String outcome,
            Status status,
            @Nullable YearMonth due,
            @Nullable LocalDate lastDay, @Nullable Boolean overdue, @Nullable LocalDate since,
            @Nullable String authority, @Nullable List<ReasonCode> missing, @Nullable String rule,
            @Nullable Citation citation, List<String> facts) {

        static RequirementAnswer from(Clock clock, LocalDate asOf) {
            var outcome = clock.outcome();
            var due = outcome instanceof Outcome.Due is ? is : null;
            var facts = clock.factsUsed().stream().sorted().map(Fact::field).toList();
            return new RequirementAnswer(clock.requirement(),
                    clock.jurisdiction() == null ? null : clock.jurisdiction().code(), outcome.code(), clock.status(),
                    due == null ? null : due.month(),
                    due == null ? null : due.lastDay(), due == null ? null : due.overdueOn(asOf),
                    outcome instanceof Outcome.Condemned(LocalDate since) ? since : null,
                    outcome instanceof Outcome.OtherAuthority(String authority) ? authority : null,
                    outcome instanceof Outcome.Undetermined(List<Reason> reasons)
                            ? reasons.stream().map(Reason::code).toList()
                            : null,
                    clock.ruleId(), clock.citation(), facts);
        }
    }

    public static AssessmentAnswer of(Facts facts, LocalDate asOf, RuleBook rules, boolean explain) {
        var explanation = explain ? rules.explain(facts, asOf).stream().map(ConsideredAnswer::from).toList() : null;
        return from(rules.assess(facts, asOf), explanation, rules);
    }

    private static AssessmentAnswer from(Assessment assessment, @Nullable List<ConsideredAnswer> explanation,
            RuleBook rules) {
        Map<String, PermissionAnswer> permissions = new LinkedHashMap<>();
        permissions.put("mayFill", PermissionAnswer.from(assessment.mayFill()));
        permissions.put("mayCarry", PermissionAnswer.from(assessment.mayCarry()));
        permissions.put("mayCarryEmpty", PermissionAnswer.from(assessment.mayCarryEmpty()));
        permissions.put("mayUse", PermissionAnswer.from(assessment.mayUse()));
        return new AssessmentAnswer(assessment.asOf(), assessment.status(), assessment.mayFill().allowed(),
                assessment.mayCarry().allowed(), assessment.mayCarryEmpty().allowed(), assessment.mayUse().allowed(),
                assessment.requirements().stream().map(clock -> RequirementAnswer.from(clock, assessment.asOf()))
                        .toList(),
                permissions, assessment.reasons(), explanation, RuleBookAnswer.from(rules), null, null, Caution.TEXT);
    }

    AssessmentAnswer replayed(Instant knownAt, String evaluatorThen) {
        return new AssessmentAnswer(asOf, status, mayFill, mayCarry, mayCarryEmpty, mayUse, requirements, permissions,
                reasons, explanation, ruleBook,
                new Replayed(knownAt, evaluatorThen, evaluatorThen.equals(ruleBook.engineVersion())), declared,
                caution);
    }

    /** With the facts that rest on a person's word. */
    public AssessmentAnswer resting(KnownContainer known) {
        return new AssessmentAnswer(asOf, status, mayFill, mayCarry, mayCarryEmpty, mayUse, requirements, permissions,
                reasons, explanation, ruleBook, replayed, Declared.of(known), caution);
    }
}
