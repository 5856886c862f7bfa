package org.collarbook.compliance.swaps;

import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.KnownContainers;
import org.collarbook.custody.routes.Calendars;
import org.collarbook.custody.routes.VisitCalendar.Visit;
import org.collarbook.holds.Holds;
import org.collarbook.registry.Containers;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.StandingHold;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Judges the container that is left at a site: whether it may be used there that day, and how long. */
@Component
class Replacement {

    private final KnownContainers known;
    private final Containers containers;
    private final Holds holds;
    private final Calendars calendars;
    private final RuleBook rules;

    Replacement(KnownContainers known, Containers containers, Holds holds, Calendars calendars, RuleBook rules) {
        this.known = known;
        this.containers = containers;
        this.holds = holds;
        this.calendars = calendars;
        this.rules = rules;
    }

    /** {@code refusals} are why it may not be used there, {@code told} what is to be said of it beside. */
    record Judged(List<Reason> refusals, List<Reason> told) {}

    Judged judge(UUID in, SwapCommand swap) {
        var container = known.byId(in).orElseThrow();
        ZoneId zone = swap.site().zone();
        var day = LocalDate.ofInstant(swap.at(), zone);
        // it stands there from now on, wherever else the register had it
        var facts = container.facts().toBuilder().jurisdiction(swap.site().jurisdiction())
                .holds(standing(container.facts(), in, swap)).build();
        var assessment = rules.assess(facts, day);
        var told = new ArrayList<Reason>();
        var out = swap.out();
        if (out != null) {
            containers.find(out).ifPresent(taken -> compare(container.container(), taken, told));
        }
        early(assessment.firstDue(), swap, day, told);
        return new Judged(assessment.mayUse().reasons(), told);
    }

    /** What has happened is judged by the holds of its moment; else one that stands refuses however early it was. */
    private @Nullable List<StandingHold> standing(Facts facts, UUID in, SwapCommand swap) {
        var now = facts.holds();
        if (swap.happened()) {
            return holds.standingAt(in, swap.at()).stream().map(hold -> new StandingHold(hold.reason().name(), null,
                    hold.reason().sentence(), hold.reason().citation())).toList();
        }
        return now == null
                ? null
                : now.stream().map(hold -> new StandingHold(hold.reason(), null, hold.text(), hold.citation()))
                        .toList();
    }

    private static void compare(RegisteredContainer left, RegisteredContainer taken, List<Reason> told) {
        if (!left.size().equals(taken.size())) {
            told.add(new Reason(ReasonCode.OTHER_SIZE, "The one left is of " + left.size() + ", the one taken away of "
                    + taken.size() + ".", null));
        }
    }

    private void early(@Nullable YearMonth due, SwapCommand swap, LocalDate day, List<Reason> told) {
        var site = swap.site().siteId();
        if (due == null) {
            return;
        }
        var calendar = calendars.ofSites(List.of(site));
        calendar.next(site, day).map(Visit::day)
                .map(next -> calendar.next(site, next).map(Visit::day).orElse(next))
                .filter(last -> due.atEndOfMonth().isBefore(last))
                .ifPresent(last -> told.add(new Reason(ReasonCode.DUE_BEFORE_VISITS, "Its last day, "
                        + due.atEndOfMonth() + ", comes before the visit on " + last + ".", null)));
    }
}
