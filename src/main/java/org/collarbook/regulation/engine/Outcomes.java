package org.collarbook.regulation.engine;

import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Outcome.Condemned;
import org.collarbook.regulation.Outcome.Due;
import org.collarbook.regulation.Outcome.NotRequired;
import org.collarbook.regulation.Outcome.OtherAuthority;
import org.collarbook.regulation.Outcome.Undetermined;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.engine.Clocks.Reading;
import org.jspecify.annotations.Nullable;

/** What a rule that governs makes of a requirement. */
final class Outcomes {

    private static final Outcome NOT_REQUIRED = new NotRequired();

    private Outcomes() {}

    static Reading of(Rule rule, Value value, Subject subject, boolean on) {
        if (!on) {
            return reading(rule, value, subject, new Undetermined(List.of(value.off)));
        }
        if (value.effect instanceof Value.Periods periods) {
            return reading(rule, value, subject, due(rule, periods, subject));
        }
        return reading(rule, value, subject, switch (value.effect) {
            case Value.OtherAuthority other -> new OtherAuthority(named(other.name(), subject.facts.specification()));
            case Value.PermitInterval _ -> permitted(subject);
            case Value.Condemns _ -> new Condemned(subject.condemnedSince());
            case Value.ServiceLife life -> lifeOver(life, subject);
            case Value.NotRequired _,Value.Periods _,Value.Gate _,Value.Densities _ -> NOT_REQUIRED;
        });
    }

    private static String named(String authority, @Nullable Specification specification) {
        return specification == null || specification.detail() == null
                ? authority
                : authority + " DOT-" + specification.detail();
    }

    private static Outcome due(Rule rule, Value.Periods periods, Subject subject) {
        if (subject.facts.requalifications() == null && (rule.sets == null || rule.sets.hasHistory())) {
            return new Undetermined(List.of(ReasonCode.MISSING_REQUALIFICATIONS.reason()));
        }
        Requalification mark = subject.mark();
        if (mark == null) {
            return from(subject.manufactured, ReasonCode.MISSING_MANUFACTURED, periods.first);
        }
        return from(mark.method() == null ? null : mark.month(), ReasonCode.MISSING_METHOD, mark.method() == null
                ? 0
                : periods.after(mark.method()));
    }

    private static Outcome from(@Nullable YearMonth start, ReasonCode missing, int months) {
        return start == null ? new Undetermined(List.of(missing.reason())) : Due.after(start, months);
    }

    private static Outcome permitted(Subject subject) {
        Permit permit = subject.facts.permit();
        if (subject.facts.requalifications() == null || permit == null || permit.intervalYears() == null) {
            return new Undetermined(List.of(ReasonCode.MISSING_REQUALIFICATIONS.reason()));
        }
        Requalification mark = subject.mark();
        if (mark == null) {
            return from(subject.manufactured, ReasonCode.MISSING_MANUFACTURED, 12 * permit.intervalYears());
        }
        if (mark.method() == null || Subject.isTankTest(mark.method())) {
            return new Undetermined(List.of((mark.method() == null
                    ? ReasonCode.MISSING_METHOD
                    : ReasonCode.METHOD_NOT_ACCEPTED).reason()));
        }
        return Due.after(mark.month(), 12 * permit.intervalYears());
    }

    private static Outcome lifeOver(Value.ServiceLife life, Subject subject) {
        YearMonth made = subject.manufactured;
        return made == null
                ? new Undetermined(List.of(ReasonCode.MISSING_MANUFACTURED.reason()))
                : new Condemned(made.plusMonths(life.months()).atEndOfMonth().plusDays(1));
    }

    static Reading reading(Rule rule, Value value, Subject subject, Outcome outcome) {
        Set<Fact> used = subject.mark() == null ? rule.factsUsedAtFirst : rule.factsUsed;
        Requirement requirement = rule.sets == null ? Requirement.SHELL : rule.sets;
        return new Reading(new Clock(requirement, outcome, rule.id, value.citation, used), value, subject.mark());
    }
}
