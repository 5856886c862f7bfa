package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.StandingHold;
import org.jspecify.annotations.Nullable;

/** Looks for the first day on which the same facts may be judged otherwise for themselves. */
final class Changes {

    private final Facts facts;
    private final LocalDate day;
    private @Nullable LocalDate first;

    Changes(Facts facts, LocalDate day) {
        this.facts = facts;
        this.day = day;
    }

    @Nullable
    LocalDate first() {
        return first;
    }

    private void consider(@Nullable LocalDate one) {
        if (one != null && one.isAfter(day) && (first == null || one.isBefore(first))) {
            first = one;
        }
    }

    private void consider(@Nullable YearMonth month) {
        consider(month == null ? null : month.atDay(1));
    }

    /** What is dated ahead counts from its day on; a permit is over on the day after it expires. */
    Changes ofFacts() {
        consider(facts.manufactured());
        consider(facts.filledOn());
        consider(facts.emptiedOn());
        Condition condition = facts.condition();
        if (condition != null) {
            consider(condition.rejectedOn());
            consider(condition.condemnedOn());
        }
        Permit permit = facts.permit();
        if (permit != null && permit.expires() != null) {
            consider(permit.expires().plusDays(1));
        }
        List<Requalification> history = facts.requalifications();
        for (int i = 0; history != null && i < history.size(); i++) {
            consider(history.get(i).month());
        }
        List<StandingHold> holds = facts.holds();
        for (int i = 0; holds != null && i < holds.size(); i++) {
            consider(holds.get(i).placedOn());
        }
        return this;
    }

    /** A service life is over on the first day after its last month; a stop begins to count after its months. */
    Changes ofRules(Plan plan) {
        YearMonth made = facts.manufactured();
        for (int months : plan.lives) {
            consider(made == null ? null : made.plusMonths(months + 1L));
        }
        LocalDate stopped = facts.outOfServiceSince();
        for (int months : plan.stops) {
            consider(stopped == null ? null : stopped.plusMonths(months));
        }
        return this;
    }
}
