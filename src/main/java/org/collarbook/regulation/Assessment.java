package org.collarbook.regulation;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The rule book applied to the facts of one container on one day. {@code mayFill}: gas may be put in, any amount.
 * {@code mayCarry}: it may be moved by road with what is in it. {@code mayCarryEmpty}: it may be moved to a depot, a
 * requalifier or scrap, known to be empty. {@code mayUse}: gas may be drawn at its site.
 */
public record Assessment(LocalDate asOf, Status status, Permission mayFill, Permission mayCarry,
        Permission mayCarryEmpty, Permission mayUse, List<Clock> requirements, List<Reason> reasons) {

    public Assessment {
        requirements = List.copyOf(requirements);
        reasons = List.copyOf(reasons);
    }

    public @Nullable Clock clock(Requirement requirement) {
        for (Clock clock : requirements) {
            if (clock.requirement() == requirement) {
                return clock;
            }
        }
        return null;
    }

    /** The earliest due month among the clocks, or null when none gives one. */
    public @Nullable YearMonth firstDue() {
        YearMonth first = null;
        for (Clock clock : requirements) {
            if (clock.outcome() instanceof Outcome.Due due && (first == null || due.month().isBefore(first))) {
                first = due.month();
            }
        }
        return first;
    }

    public boolean gives(ReasonCode code) {
        return reasons.stream().anyMatch(reason -> reason.code() == code);
    }
}
