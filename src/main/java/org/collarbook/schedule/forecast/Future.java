package org.collarbook.schedule.forecast;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Objects;
import java.util.Set;

import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/**
 * The years ahead of one container, played through under the rules: when something falls due it is taken to be done in
 * that month, and what the rules then say of the container is asked anew. It goes from one due month to the next and
 * stops on each day between them on which the rules, or the facts by date alone, say something else.
 */
final class Future {

    private final RuleBook rules;
    /** The days ahead on which some value of the rule book starts or ends. */
    private final NavigableSet<LocalDate> switches;
    private final LocalDate end;
    private final LocalDate today;
    private final Choice choice;
    private final Sink sink;
    private final Map<Requirement, YearMonth> doneIn = new EnumMap<>(Requirement.class);
    private final Set<Requirement> over = EnumSet.noneOf(Requirement.class);
    private final Set<Requirement> told = EnumSet.noneOf(Requirement.class);
    private Facts facts;
    private LocalDate day;
    private boolean substituted;

    Future(RuleBook rules, NavigableSet<LocalDate> switches, LocalDate end, Facts facts, LocalDate today,
            Choice choice, Sink sink) {
        this.rules = rules;
        this.switches = switches;
        this.end = end;
        this.facts = facts;
        this.today = today;
        this.day = today;
        this.choice = choice;
        this.sink = sink;
    }

    void play() {
        var now = rules.assess(facts, day);
        if (now.requirements().isEmpty() && now.status() == Status.UNDETERMINED) {
            sink.silent(null, WhyNot.UNDETERMINED, false);
        }
        while (goesOn(now)) {
            tellSilent(now);
            var next = next(now);
            var turn = turn();
            if (turn != null && !turn.isAfter(next == null ? end : lastDay(next.month()))) {
                day = turn;
                now = rules.assess(facts, day);
            } else if (next == null) {
                return;
            } else {
                day = lastDay(next.month());
                now = meet(next, now);
            }
        }
    }

    /** A clock that runs out in a month; late when that month was another one, which is over. */
    private record Next(Requirement requirement, YearMonth month, boolean late) {}

    private boolean goesOn(Assessment now) {
        boolean later = day.isAfter(today);
        var why = switch (now.status()) {
            case CONDEMNED -> WhyNot.CONDEMNED;
            case REJECTED -> WhyNot.REJECTED;
            case ON_HOLD -> WhyNot.HELD;
            case UNDETERMINED, OTHER_AUTHORITY, OVERDUE, USE_UP, DUE_THIS_MONTH, IN_DATE, NOT_REQUIRED -> null;
        };
        if (why == WhyNot.CONDEMNED && later) {
            sink.leaves(YearMonth.from(day));
        } else if (why != null) {
            sink.silent(null, why, later);
        }
        return why == null;
    }

    /** Each clock that gives no month, once; one that gives a month later on is then counted as well. */
    private void tellSilent(Assessment now) {
        for (Clock clock : now.requirements()) {
            var why = switch (clock.outcome()) {
                case Outcome.Due _,Outcome.Condemned _ -> null;
                case Outcome.NotRequired _ -> WhyNot.NOT_REQUIRED;
                case Outcome.OtherAuthority _ -> WhyNot.OTHER_AUTHORITY;
                case Outcome.Undetermined _ -> WhyNot.UNDETERMINED;
            };
            if (why != null && isAlone(now, clock.requirement()) && told.add(clock.requirement())) {
                sink.silent(clock.requirement(), why, day.isAfter(today));
            }
        }
    }

    /** Where several jurisdictions answer, one that gives a month is enough for it to be forecast. */
    private static boolean isAlone(Assessment now, Requirement requirement) {
        for (Clock clock : now.requirements()) {
            if (clock.requirement() == requirement && clock.outcome() instanceof Outcome.Due) {
                return false;
            }
        }
        return true;
    }

    /** The first clock that runs out before the end; of one month the first in the order of the requirements. */
    private @Nullable Next next(Assessment now) {
        var current = YearMonth.from(day);
        Next first = null;
        for (Clock clock : now.requirements()) {
            if (clock.outcome() instanceof Outcome.Due(var due) && !over.contains(clock.requirement())) {
                boolean past = due.isBefore(current);
                var one = new Next(clock.requirement(), past ? current : due, past && day.equals(today));
                first = first == null || isBefore(one, first) ? one : first;
            }
        }
        return first == null || first.month().atDay(1).isAfter(end) ? null : first;
    }

    private static boolean isBefore(Next one, Next other) {
        int months = one.month().compareTo(other.month());
        int order = months != 0 ? months : one.requirement().compareTo(other.requirement());
        // of two jurisdictions the one by which it is late
        return order < 0 || order == 0 && one.late();
    }

    private LocalDate lastDay(YearMonth month) {
        return month.equals(YearMonth.from(today)) ? day : month.atEndOfMonth();
    }

    /** The next day on which something may be said otherwise of the same facts. */
    private @Nullable LocalDate turn() {
        var ruleSwitch = switches.higher(day);
        var change = rules.nextChangeAfter(facts, day);
        var turn = change == null || ruleSwitch != null && ruleSwitch.isBefore(change) ? ruleSwitch : change;
        return turn == null || turn.isAfter(end) ? null : turn;
    }

    private Assessment meet(Next next, Assessment before) {
        var methods = Usual.methods(facts, next.requirement(), choice);
        var wanted = methods.isEmpty() ? null : methods.iterator().next();
        boolean first = !next.month().equals(doneIn.put(next.requirement(), next.month()));
        var after = first ? metBy(methods, next, before) : null;
        if (after != null) {
            return after;
        }
        if (first) {
            sink.done(next.month(), next.requirement(), wanted, next.late());
        }
        over.add(next.requirement());
        sink.silent(next.requirement(), WhyNot.NOT_REPEATED, true);
        return before;
    }

    /** What is said once it is done by the first method that the rules take; null when they take none. */
    private @Nullable Assessment metBy(Set<Method> methods, Next next, Assessment before) {
        // a record added to a history that nobody knows would make it look known
        for (var method : facts.requalifications() == null ? Set.<Method>of() : methods) {
            var then = Usual.with(facts, Usual.record(facts, next.month(), method));
            var after = rules.assess(then, day);
            if (isMet(next, before, after)) {
                tellMethod(next.requirement(), method != methods.iterator().next());
                sink.done(next.month(), next.requirement(), method, next.late());
                facts = then;
                return after;
            }
        }
        return null;
    }

    private void tellMethod(Requirement requirement, boolean other) {
        if (requirement != Requirement.SHELL || facts.kind() != ContainerKind.CYLINDER) {
            return;
        }
        if (other && !substituted) {
            substituted = true;
            sink.methodNotAccepted();
        }
        if (choice == Choice.AS_LAST && Usual.lastMethod(facts) == null) {
            sink.noLastMethod();
        }
    }

    /** Whether each clock that gave a month gives a later one now, or none because nothing more is asked. */
    private static boolean isMet(Next next, Assessment before, Assessment after) {
        for (Clock clock : after.requirements()) {
            if (clock.requirement() == next.requirement() && gaveMonth(before, clock)) {
                boolean met = switch (clock.outcome()) {
                    case Outcome.Due(var due) -> due.isAfter(next.month());
                    case Outcome.NotRequired _,Outcome.Condemned _ -> true;
                    case Outcome.OtherAuthority _,Outcome.Undetermined _ -> false;
                };
                if (!met) {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean gaveMonth(Assessment before, Clock now) {
        for (Clock clock : before.requirements()) {
            if (clock.requirement() == now.requirement() && clock.outcome() instanceof Outcome.Due
                    && Objects.equals(clock.jurisdiction(), now.jurisdiction())) {
                return true;
            }
        }
        return false;
    }
}
