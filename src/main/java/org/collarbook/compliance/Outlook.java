package org.collarbook.compliance;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Objects;

import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/**
 * What becomes of the same facts by date alone. It asks the rules themselves on each day after today on which their
 * answer or a stored clock's own word may turn into another.
 */
final class Outlook {

    private final RuleBook rules;
    private final Facts facts;
    private final Assessment today;
    /** The next days ahead of the one that was asked about last; far off when there is none. */
    private LocalDate change;
    private LocalDate ruleSwitch;

    Outlook(RuleBook rules, Facts facts, Assessment today) {
        this.rules = rules;
        this.facts = facts;
        this.today = today;
        this.change = today.asOf();
        this.ruleSwitch = today.asOf();
    }

    /** Whether it will be one to use up once its month has passed, on the first day on which it would be overdue. */
    boolean isUsedUp(RequirementRow row) {
        if (row.due() == null || facts.filledOn() == null) {
            return false;
        }
        var overdue = row.due().plusMonths(1);
        var then = overdue.isAfter(today.asOf()) ? rules.assess(facts, overdue) : today;
        return row.toldBy(then) == Status.USE_UP;
    }

    /** Each row with the first day on which its own word is no longer what the rules say. */
    List<RequirementRow> over(List<RequirementRow> rows) {
        var told = today;
        while (true) {
            var then = told;
            rows.replaceAll(row -> row.changedBy(then));
            var day = next(told, rows);
            if (day.equals(LocalDate.MAX)) {
                return rows;
            }
            told = rules.assess(facts, day);
        }
    }

    private LocalDate next(Assessment told, List<RequirementRow> rows) {
        var day = told.asOf();
        if (!change.isAfter(day)) {
            change = orNever(rules.nextChangeAfter(facts, day));
        }
        if (!ruleSwitch.isAfter(day)) {
            ruleSwitch = orNever(rules.nextSwitchAfter(day));
        }
        var next = change.isBefore(ruleSwitch) ? change : ruleSwitch;
        return runsAsStored(told, rows) ? next : orMonth(next, told, rows);
    }

    /** A single clock that still gives the month that is stored: until a change its word follows from that month. */
    private static boolean runsAsStored(Assessment told, List<RequirementRow> rows) {
        return rows.size() == 1 && told.requirements().size() == 1
                && Objects.equals(RequirementRow.due(told.requirements().getFirst()), rows.getFirst().due());
    }

    private static LocalDate orMonth(LocalDate ahead, Assessment told, List<RequirementRow> rows) {
        var day = told.asOf();
        var next = ahead;
        for (Clock clock : told.requirements()) {
            next = clock.outcome() instanceof Outcome.Due(var month) ? sooner(next, month, day) : next;
        }
        for (var row : rows) {
            next = row.due() == null || row.change() != null ? next : sooner(next, YearMonth.from(row.due()), day);
        }
        return next;
    }

    /** The beginning or the end of a due month, when it lies between the two days. */
    private static LocalDate sooner(LocalDate next, YearMonth month, LocalDate day) {
        var begins = month.atDay(1);
        var turn = begins.isAfter(day) ? begins : begins.plusMonths(1);
        return turn.isAfter(day) && turn.isBefore(next) ? turn : next;
    }

    private static LocalDate orNever(@Nullable LocalDate day) {
        return day == null ? LocalDate.MAX : day;
    }
}
