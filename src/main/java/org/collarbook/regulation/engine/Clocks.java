package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Outcome.Condemned;
import org.collarbook.regulation.Outcome.Due;
import org.collarbook.regulation.Outcome.NotRequired;
import org.collarbook.regulation.Outcome.OtherAuthority;
import org.collarbook.regulation.Outcome.Undetermined;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** Finds what one requirement says on one day: the newest mark governs, and the first rule that applies to it. */
final class Clocks {

    private Clocks() {}

    /** A clock with the value behind it; with no clock the requirement does not run, or the value is switched off. */
    record Reading(@Nullable Clock clock, @Nullable Value value, @Nullable Requalification mark) {}

    private static final Reading NOTHING = new Reading(null, null, null);

    static Reading read(Plan.Group group, Subject subject, LocalDate day) {
        if (subject.contradictory() && group.requirement().hasHistory()) {
            return undetermined(group.requirement(), ReasonCode.CONTRADICTORY_FACTS);
        }
        int stretch = subject.timeline.stretchOf(day);
        List<Requalification> history = subject.facts.requalifications();
        YearMonth newest = history == null || !group.requirement().hasHistory()
                ? null
                : group.requirement().movedByAny() && day == subject.asOf
                        ? subject.newestPassed()
                        : newest(group.requirement(), subject, history, day);
        Reading worst = NOTHING;
        for (int i = 0; newest != null && i < history.size(); i++) {
            Requalification one = history.get(i);
            if (belongs(group.requirement(), one) && subject.counts(one, day) && one.month().equals(newest)) {
                subject.judging(one);
                worst = worse(worst, judge(group, subject, day, stretch));
            }
        }
        if (newest == null) {
            subject.judging(null);
            worst = judge(group, subject, day, stretch);
        }
        return worst;
    }

    private static @Nullable YearMonth newest(Requirement requirement, Subject subject, List<Requalification> history,
            LocalDate day) {
        YearMonth newest = null;
        for (int i = 0; i < history.size(); i++) {
            Requalification one = history.get(i);
            if (belongs(requirement, one) && subject.counts(one, day)
                    && (newest == null || one.month().isAfter(newest))) {
                newest = one.month();
            }
        }
        return newest;
    }

    /** A record of unknown method may be of any. */
    private static boolean belongs(Requirement requirement, Requalification one) {
        Method method = one.method();
        return method == null ? requirement.hasHistory() : requirement.movedBy(method);
    }

    /** Of two marks of one month the more restrictive governs, so that their order does not matter. */
    private static Reading worse(Reading one, Reading other) {
        if (one.clock == null || other.clock == null) {
            return one.clock == null ? other : one;
        }
        int difference = rank(other.clock.outcome()) - rank(one.clock.outcome());
        if (difference == 0 && one.clock.outcome() instanceof Due a && other.clock.outcome() instanceof Due b) {
            int months = a.month().compareTo(b.month());
            return months == 0 ? withoutRin(one, other) : months < 0 ? one : other;
        }
        return difference > 0 ? other : one;
    }

    private static Reading withoutRin(Reading one, Reading other) {
        return other.mark != null && other.mark.lacksRin() ? other : one;
    }

    private static int rank(Outcome outcome) {
        return switch (outcome) {
            case NotRequired _ -> 0;
            case Due _ -> 1;
            case OtherAuthority _ -> 2;
            case Undetermined _ -> 3;
            case Condemned _ -> 4;
        };
    }

    private static Reading judge(Plan.Group group, Subject subject, LocalDate day, int stretch) {
        boolean extra = isExtra(group.requirement());
        Doubt doubt = null;
        Value silent = null;
        for (Rule rule : group.rules()) {
            Value value = rule.valueFor(subject, stretch);
            Verdict verdict = value == null ? Verdict.NO : verdict(rule, value, subject, day);
            if (value == null || verdict == Verdict.NO) {
                continue;
            }
            boolean on = value.isOn(subject.facts, rule.id);
            if (!on && extra) {
                silent = verdict == Verdict.YES ? value : silent;
            } else if (verdict == Verdict.YES && doubt == null) {
                return Outcomes.of(rule, value, subject, on);
            } else {
                doubt = doubt == null ? new Doubt(rule, value) : doubt;
                doubt.gather(rule, value, subject, on);
                if (verdict == Verdict.YES) {
                    break;
                }
            }
        }
        if (doubt != null) {
            return doubt.reading(subject);
        }
        return extra ? new Reading(null, silent, null) : nothingApplies(group, subject, stretch);
    }

    private static Verdict verdict(Rule rule, Value value, Subject subject, LocalDate day) {
        if (!speaksOf(value, subject)) {
            return Verdict.NO;
        }
        Verdict verdict = Rule.all(rule.tests, subject);
        return verdict == Verdict.YES && lifeLeft(value, subject, day) ? Verdict.NO : verdict;
    }

    /** A rule that may govern, but for what is not known: then it cannot be told, whatever the lower ones say. */
    private record Doubt(Rule rule, Value value, Reasons reasons) {

        private Doubt(Rule rule, Value value) {
            this(rule, value, new Reasons());
        }

        void gather(Rule other, Value said, Subject subject, boolean on) {
            for (Test test : other.tests) {
                if (test.check().on(subject) == Verdict.UNKNOWN) {
                    reasons.add(test.missing());
                }
            }
            if (!on) {
                reasons.add(said.off);
            }
        }

        Reading reading(Subject subject) {
            return Outcomes.reading(rule, value, subject, new Undetermined(reasons.list()));
        }
    }

    /** A requirement that runs beside the container's own: where no rule that is on sets it, it does not run. */
    private static boolean isExtra(Requirement requirement) {
        return requirement == Requirement.VISUAL || !requirement.movedByAny();
    }

    private static Reading nothingApplies(Plan.Group group, Subject subject, int stretch) {
        Requalification mark = subject.mark();
        if (mark != null) {
            for (Rule rule : group.rules()) {
                Value value = rule.valueFor(subject, stretch);
                if (value != null && value.effect instanceof Value.Periods
                        && Rule.all(rule.tests, subject) == Verdict.YES) {
                    return undetermined(group.requirement(), ReasonCode.METHOD_NOT_ACCEPTED);
                }
            }
        }
        return undetermined(group.requirement(), ReasonCode.NO_RULE_HELD);
    }

    static Reading undetermined(Requirement requirement, ReasonCode code) {
        return new Reading(new Clock(requirement, new Undetermined(List.of(code.reason())), null, null, Set.of()), null,
                null);
    }

    /** Whether this value says anything about the mark that is being judged, or about the time before any mark. */
    private static boolean speaksOf(Value value, Subject subject) {
        Requalification mark = subject.mark();
        if (value.effect instanceof Value.Periods periods) {
            return mark == null
                    ? periods.first > 0 || subject.facts.requalifications() == null
                    : mark.method() == null || periods.after(mark.method()) > 0;
        }
        return !(value.effect instanceof Value.NotRequired never) || never.after() == null
                || mark != null && mark.method() == never.after();
    }

    /** A service life that is not over decides nothing. */
    private static boolean lifeLeft(Value value, Subject subject, LocalDate day) {
        return value.effect instanceof Value.ServiceLife life && subject.manufactured != null && !Outcome.isPast(
                subject.manufactured.plusMonths(life.months()), day);
    }
}
