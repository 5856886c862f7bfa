package org.collarbook.schedule.forecast;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.stream.Stream;

import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/**
 * The shell of one cylinder in another way, slowly: every month is asked on its last day (the first one today), nothing
 * is skipped, and what is past or in its month is done.
 */
final class MonthByMonth {

    private MonthByMonth() {}

    static List<String> shell(RuleBook rules, Facts given, LocalDate today, int years, Choice choice) {
        var done = new ArrayList<String>();
        if (given.kind() != ContainerKind.CYLINDER || given.requalifications() == null) {
            return done;
        }
        var history = new ArrayList<>(given.requalifications());
        var first = YearMonth.from(today);
        for (int i = 0; i < 12 * years; i++) {
            var month = first.plusMonths(i);
            var day = i == 0 ? today : month.atEndOfMonth();
            var told = rules.assess(given.toBuilder().requalifications(history).build(), day);
            if (EnumSet.of(Status.CONDEMNED, Status.REJECTED, Status.ON_HOLD).contains(told.status())) {
                return done;
            }
            var due = earliest(told);
            if (due == null || due.isAfter(month)) {
                continue;
            }
            var method = accepted(rules, given, history, day, month, choice);
            history.add(new Requalification(month, method, false, false, null, true,
                    Requalification.Result.PASSED));
            done.add(month + " " + method + (i == 0 && due.isBefore(month) ? " late" : ""));
        }
        return done;
    }

    /** The wanted one, the last one, or the expansion test: the first of which the rules then give a later month. */
    private static Method accepted(RuleBook rules, Facts given, List<Requalification> history, LocalDate day,
            YearMonth month, Choice choice) {
        var tried = new ArrayList<Method>();
        if (choice != Choice.AS_LAST) {
            tried.add(Method.valueOf(choice.name()));
        }
        history.stream().filter(past -> past.method() != null)
                .reduce((one, other) -> other.month().isBefore(one.month()) ? one : other)
                .ifPresent(past -> tried.add(past.method()));
        tried.add(Method.VOLUMETRIC_EXPANSION);
        for (var method : tried) {
            var more = new ArrayList<>(history);
            more.add(new Requalification(month, method, false, false, null, true, Requalification.Result.PASSED));
            var then = rules.assess(given.toBuilder().requalifications(more).build(), day);
            var due = earliest(then);
            if (then.status() == Status.CONDEMNED || due != null && due.isAfter(month)) {
                return method;
            }
        }
        throw new AssertionError("no method is taken in " + month + " of " + given);
    }

    private static @Nullable YearMonth earliest(Assessment told) {
        return told.requirements().stream().filter(clock -> clock.requirement() == Requirement.SHELL)
                .flatMap(clock -> clock.outcome() instanceof Outcome.Due(var month)
                        ? Stream.of(month)
                        : Stream.empty())
                .min(Comparator.naturalOrder()).orElse(null);
    }
}
