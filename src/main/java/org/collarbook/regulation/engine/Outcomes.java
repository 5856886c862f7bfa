package org.collarbook.regulation.engine;

import java.time.YearMonth;
import java.util.List;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.Method;
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
import org.jspecify.annotations.Nullable;

/** What a rule that governs makes of a requirement. */
final class Outcomes {

    private static final Outcome NOT_REQUIRED = new NotRequired();

    private Outcomes() {}

    static Reading of(Rule rule, Value value, Subject subject, boolean on) {
        Outcome outcome = on
                ? outcome(rule, value, subject)
                : new Undetermined(List.of(value.citing(ReasonCode.RULE_OFF)));
        return new Reading(requirement(rule), outcome, rule, value, subject.mark(), null);
    }

    static Requirement requirement(Rule rule) {
        return rule.part instanceof Part.Sets sets ? sets.requirement() : Requirement.SHELL;
    }

    private static Outcome outcome(Rule rule, Value value, Subject subject) {
        if (value.effect instanceof Effect.Periods periods) {
            return due(rule, value, periods, subject);
        }
        return switch (value.effect) {
            case Effect.OtherAuthority other -> new OtherAuthority(named(other.name(), subject.facts.specification()));
            case Effect.PermitInterval _ -> permitted(value, subject);
            case Effect.AsRecorded _ -> recorded(value, subject.facts.schemeDue());
            case Effect.Condemns _ -> new Condemned(subject.condemnedSince());
            case Effect.ServiceLife life -> lifeOver(value, life, subject);
            case Effect.Undecided undecided -> missing(undecided.why(), value);
            case Effect.NotRequired _,Effect.Periods _,Effect.Gate _,Effect.Densities _,Effect.InForce _,Effect.Rating _ ->
                NOT_REQUIRED;
        };
    }

    private static Outcome missing(ReasonCode code, Value value) {
        return new Undetermined(List.of(value.citing(code)));
    }

    private static String named(String authority, @Nullable Specification specification) {
        String detail = specification == null ? null : specification.detail();
        if (specification == null || detail == null) {
            return authority;
        }
        return authority + (specification.authority() == Authority.SPECIAL_PERMIT ? " DOT-" : " ") + detail;
    }

    private static Outcome recorded(Value value, @Nullable YearMonth month) {
        return month == null ? missing(ReasonCode.MISSING_SCHEME_DUE, value) : new Due(month);
    }

    private static Outcome due(Rule rule, Value value, Effect.Periods periods, Subject subject) {
        if (subject.facts.requalifications() == null && requirement(rule).hasHistory()) {
            return missing(ReasonCode.MISSING_REQUALIFICATIONS, value);
        }
        Requalification mark = subject.mark();
        if (mark == null) {
            Outcome first = from(value, subject.manufactured, ReasonCode.MISSING_MANUFACTURED, periods.first);
            YearMonth least = periods.notBefore;
            return least != null && first instanceof Due due && due.month().isBefore(least) ? new Due(least) : first;
        }
        boolean told = mark.method() != null || periods.isForAnyMethod();
        return from(value, told ? mark.month() : null, ReasonCode.MISSING_METHOD, periods.after(mark.method()));
    }

    private static Outcome from(Value value, @Nullable YearMonth start, ReasonCode missing, int months) {
        return start == null ? missing(missing, value) : Due.after(start, months);
    }

    private static Outcome permitted(Value value, Subject subject) {
        Permit permit = subject.facts.permit();
        if (subject.facts.requalifications() == null || permit == null || permit.intervalYears() == null) {
            return missing(ReasonCode.MISSING_REQUALIFICATIONS, value);
        }
        Requalification mark = subject.mark();
        if (mark == null) {
            return from(value, subject.manufactured, ReasonCode.MISSING_MANUFACTURED, 12 * permit.intervalYears());
        }
        Method method = mark.method();
        if (method == null || !method.isOfCylinder()) {
            return missing(method == null ? ReasonCode.MISSING_METHOD : ReasonCode.METHOD_NOT_ACCEPTED, value);
        }
        return Due.after(mark.month(), 12 * permit.intervalYears());
    }

    private static Outcome lifeOver(Value value, Effect.ServiceLife life, Subject subject) {
        YearMonth made = subject.manufactured;
        return made == null
                ? missing(ReasonCode.MISSING_MANUFACTURED, value)
                : new Condemned(made.plusMonths(life.months()).atEndOfMonth().plusDays(1));
    }
}
