package org.collarbook.dispatch.plans;

import java.util.ArrayList;
import java.util.List;

import org.collarbook.dispatch.plans.Chains.LeftOver;
import org.collarbook.dispatch.plans.Pass.Left;
import org.collarbook.dispatch.plans.PlanLine.Why;

/**
 * Which visit pulls which cylinder; who is left over and why; how many are not needed yet; what is missing so that nobody
 * for want of capacity is left over; and, beside it, what it would be to pull each at the last visit before its date.
 */
final class Plan {

    private final PlanInput input;
    private final Chains sorted;
    private final Prices prices;
    private final FreePlaces places;
    private final List<Pass> passes = new ArrayList<>();
    private final List<PlanLine> lines = new ArrayList<>();
    private final Load load;

    private Plan(PlanInput input) {
        this.input = input;
        this.sorted = Chains.of(input);
        this.prices = Prices.of(input, sorted.chains());
        this.places = FreePlaces.all(input.racks());
        var out = Pass.outOfService(input, sorted.chains(), places, prices);
        var due = Pass.due(input, sorted.chains(), places.without(out.lines()), prices);
        passes.add(out);
        passes.add(due);
        passes.forEach(pass -> lines.addAll(pass.lines()));
        lines.sort(PlanLine.IN_TIME);
        this.load = Load.of(lines);
    }

    static Plan of(PlanInput input) {
        return new Plan(input);
    }

    PlanInput input() {
        return input;
    }

    List<PlanLine> lines() {
        return List.copyOf(lines);
    }

    Load load() {
        return load;
    }

    int notNeeded() {
        return sorted.notNeeded();
    }

    FreePlaces places() {
        return places;
    }

    List<LeftOver> remainder() {
        var remainder = new ArrayList<>(sorted.leftOver());
        passes.forEach(pass -> pass.left().forEach(left -> remainder.add(leftOver(left))));
        remainder.sort((one, other) -> Cylinder.BY_STOP.compare(one.cylinder(), other.cylinder()));
        return remainder;
    }

    private LeftOver leftOver(Left left) {
        var chain = left.chain();
        boolean toShop = left.cylinder().standing() == Cylinder.Standing.DUE;
        boolean everyWeekFull = toShop;
        boolean everyRackFull = true;
        for (int visit = 0; visit <= left.lastVisit(); visit++) {
            var rack = chain.rack(visit);
            var week = IsoWeek.of(rack.day());
            everyRackFull &= load.onRack(rack) >= places.at(rack);
            everyWeekFull &= load.inShop(week) >= input.shop().in(week);
        }
        var reason = everyRackFull == everyWeekFull
                ? WhyNot.SHOP_AND_RACK_FULL
                : everyRackFull ? WhyNot.RACK_FULL : WhyNot.SHOP_FULL;
        return new LeftOver(left.cylinder(), reason, chain.visits().getFirst().day(),
                chain.visits().get(left.lastVisit()).day());
    }

    /** What is missing. Those out of service have their places first, as in the plan. */
    ExtraCapacity extra() {
        if (passes.stream().allMatch(pass -> pass.left().isEmpty())) {
            return ExtraCapacity.NONE;
        }
        var chains = sorted.chains();
        var forOut = Pass.extraOutOfService(chains, places, prices);
        var granted = places.with(forOut.racks());
        var out = Pass.outOfService(input, chains, granted, prices);
        return forOut.and(Pass.extraDue(chains, granted.without(out.lines()), input.shop(), prices));
    }

    /** How far the plan may be from the best; 0 is proof that none is better. */
    long gap() {
        return passes.stream().mapToLong(Pass::gap).sum();
    }

    /** Each at the last visit before its date, and what is late or out of service at the first, whatever that asks of shop and racks. */
    List<PlanLine> naive() {
        var naive = new ArrayList<PlanLine>();
        for (var chain : sorted.chains()) {
            chain.outOfService().forEach(one -> naive.add(
                    new PlanLine(one, chain.visits().getFirst(), Why.OUT_OF_SERVICE)));
            chain.late().forEach(one -> naive.add(new PlanLine(one, chain.visits().getFirst(), Why.OVERDUE)));
            chain.due().forEach(one -> naive.add(
                    new PlanLine(one, chain.visits().get(chain.deadline(one.dueDay())), Why.DUE)));
        }
        return naive;
    }
}
