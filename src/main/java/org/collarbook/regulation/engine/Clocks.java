package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Outcome.Undetermined;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** Finds what one requirement says on one day: the newest mark governs, and the first rule that applies to it. */
final class Clocks {

    private Clocks() {}

    static Reading read(Plan.Group group, Subject subject, LocalDate day) {
        Requirement requirement = group.requirement();
        if (subject.contradictory() && requirement.hasHistory()) {
            return Reading.undetermined(requirement, ReasonCode.CONTRADICTORY_FACTS);
        }
        int stretch = subject.timeline.stretchOf(day);
        List<Requalification> history = subject.facts.requalifications();
        YearMonth newest = history == null || !requirement.hasHistory()
                ? null
                : requirement.isOfTheWhole() && day == subject.asOf
                        ? subject.newestPassed()
                        : newest(requirement, subject, history, day);
        Reading worst = Reading.NOTHING;
        for (int i = 0; newest != null && i < history.size(); i++) {
            Requalification one = history.get(i);
            if (Subject.belongs(requirement, one) && subject.counts(one, day) && one.month().equals(newest)) {
                subject.judging(one);
                worst = worst.orWorse(judge(group, subject, day, stretch));
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
            if (Subject.belongs(requirement, one) && subject.counts(one, day)
                    && (newest == null || one.month().isAfter(newest))) {
                newest = one.month();
            }
        }
        return newest;
    }

    private static Reading judge(Plan.Group group, Subject subject, LocalDate day, int stretch) {
        boolean beside = group.requirement() != Requirement.SHELL;
        Doubt doubt = null;
        Reading silent = null;
        for (Rule rule : group.rules()) {
            Value value = rule.valueFor(subject, stretch);
            Verdict verdict = value == null ? Verdict.NO : verdict(rule, value, subject, day);
            if (value == null || verdict == Verdict.NO) {
                silent = silent == null && value != null ? unrecorded(rule, value, subject) : silent;
                continue;
            }
            boolean on = value.isOn(subject.facts, rule.id);
            if (!on && beside) {
                silent = Reading.told(value.citing(ReasonCode.RULE_OFF));
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
        return beside ? silent == null ? Reading.NOTHING : silent : nothingApplies(group, subject, stretch);
    }

    /**
     * A clock that starts with a record: of a part it does not run before the first one, which is told; of the container
     * itself it cannot be told, and unknown is not fine.
     */
    private static @Nullable Reading unrecorded(Rule rule, Value value, Subject subject) {
        boolean waits = subject.mark() == null && subject.facts.requalifications() != null
                && value.effect instanceof Effect.Periods periods && periods.first == 0
                && value.isOn(subject.facts, rule.id) && Rule.all(rule.tests, subject) == Verdict.YES;
        if (!waits) {
            return null;
        }
        Reason missing = value.citing(ReasonCode.MISSING_RECORD);
        Requirement requirement = Outcomes.requirement(rule);
        return requirement.isOfTheContainer()
                ? new Reading(requirement, new Undetermined(List.of(missing)), rule, value, null, null)
                : Reading.told(missing);
    }

    static Verdict verdict(Rule rule, Value value, Subject subject, LocalDate day) {
        if (!speaksOf(rule, value, subject)) {
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
                    reasons.addOnce(said.citing(test.missing()));
                }
            }
            if (!on) {
                reasons.add(said.citing(ReasonCode.RULE_OFF));
            }
        }

        Reading reading(Subject subject) {
            return new Reading(Outcomes.requirement(rule), new Undetermined(reasons.list()), rule, value,
                    subject.mark(), null);
        }
    }

    private static Reading nothingApplies(Plan.Group group, Subject subject, int stretch) {
        Requalification mark = subject.mark();
        for (Rule rule : group.rules()) {
            Value value = mark == null ? null : rule.valueFor(subject, stretch);
            if (value != null && value.effect instanceof Effect.Periods
                    && Rule.all(rule.tests, subject) == Verdict.YES) {
                Reason why = value.citing(ReasonCode.METHOD_NOT_ACCEPTED);
                return new Reading(group.requirement(), new Undetermined(List.of(why)), null, null, null, null);
            }
        }
        return Reading.undetermined(group.requirement(), ReasonCode.NO_RULE_HELD);
    }

    /**
     * Whether this value says anything about the mark that is being judged, or about the time before any mark. A mark of
     * no known method may be any test of a part, so no clock of a part is silent about it; of the shell another rule says.
     */
    static boolean speaksOf(Rule rule, Value value, Subject subject) {
        Requalification mark = subject.mark();
        if (value.effect instanceof Effect.Periods periods) {
            if (mark == null) {
                return periods.first > 0 || subject.facts.requalifications() == null;
            }
            Method method = mark.method();
            return method == null
                    ? periods.isAfterMarks() || Outcomes.requirement(rule) != Requirement.SHELL
                    : periods.after(method) > 0;
        }
        return !(value.effect instanceof Effect.NotRequired never) || never.after() == null
                || mark != null && mark.method() == never.after();
    }

    /** A service life that is not over decides nothing. */
    private static boolean lifeLeft(Value value, Subject subject, LocalDate day) {
        return value.effect instanceof Effect.ServiceLife life && subject.manufactured != null
                && !Outcome.isPast(subject.manufactured.plusMonths(life.months()), day);
    }
}
