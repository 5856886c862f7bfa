package org.collarbook.dispatch.plans;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.dispatch.plans.Chains.LeftOver;
import org.collarbook.dispatch.plans.PlanLine.Why;
import org.collarbook.dispatch.plans.ReadInput.Beside;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * What a plan comes to, beside what it would be to pull each at the last visit before its date.
 *
 * @param notNeededYet due so late that a visit after the plan still pulls them in time
 * @param notRequired no clock runs on them
 * @param elsewhere at a depot, a requalifier or on a vehicle, where no route calls, or lost and not seen since
 * @param gap how far the plan may be from the best; 0 is proof that none is better
 */
@Schema(name = "PullPlanSummary")
record PlanSummary(int planned, Map<Why, Integer> plannedBecause, int remainder, Map<WhyNot, Integer> remainderBecause,
        int notNeededYet, int notRequired, int elsewhere, Measures plan, Measures lastVisitBefore, Missing missing,
        long gap) {

    /** 365.2425 days a year, twelve months. */
    private static final BigDecimal DAYS_A_MONTH = new BigDecimal("30.436875");

    /** {@code wastedMonths} of remaining life are those of the cylinders that are not late; {@code mean} is of each. */
    @Schema(name = "PullPlanMeasures")
    record Measures(int cylinders, int peakWeek, long weeksOverCapacity, long racksOverCapacity, long wastedDays,
            BigDecimal wastedMonths, BigDecimal meanWastedMonths) {

        static Measures of(Plan plan, List<PlanLine> lines, Load load) {
            long days = lines.stream().mapToLong(PlanLine::wastedDays).sum();
            long inTime = lines.stream().filter(line -> line.why() == Why.DUE).count();
            var months = BigDecimal.valueOf(days).divide(DAYS_A_MONTH, 2, RoundingMode.HALF_UP);
            return new Measures(lines.size(), load.peak(), load.weeksOver(plan.input()), load.racksOver(plan.places()),
                    days, months, inTime == 0
                            ? BigDecimal.ZERO.setScale(2)
                            : BigDecimal.valueOf(days).divide(DAYS_A_MONTH.multiply(BigDecimal.valueOf(inTime)), 2,
                                    RoundingMode.HALF_UP));
        }
    }

    /** In all: so many more in the shop, and so many more places on racks, and nobody is left over for want of them. */
    @Schema(name = "PullPlanMissing")
    record Missing(int shop, int racks) {}

    /** A week of the shop; {@code missing}: by how many more nobody is left over. */
    @Schema(name = "PullPlanWeek")
    record Week(String week, LocalDate monday, int plan, int lastVisitBefore, int capacity, int missing) {}

    /** A rack that is too small on a day. */
    @Schema(name = "PullPlanMissingRack")
    record MissingRack(LocalDate day, UUID vehicle, String size, int missing) {}

    static PlanSummary of(Plan plan, List<LeftOver> remainder, ExtraCapacity extra, long gap, Beside beside) {
        var naive = plan.naive();
        var planned = new EnumMap<Why, Integer>(Why.class);
        plan.lines().forEach(line -> planned.merge(line.why(), 1, Integer::sum));
        var left = new EnumMap<WhyNot, Integer>(WhyNot.class);
        remainder.forEach(one -> left.merge(one.reason(), 1, Integer::sum));
        return new PlanSummary(plan.lines().size(), planned, remainder.size(), left,
                plan.notNeeded() + beside.dueLater(), beside.notRequired(), beside.elsewhere(),
                Measures.of(plan, plan.lines(), plan.load()), Measures.of(plan, naive, Load.of(naive)),
                new Missing(sum(extra.shop()), sum(extra.racks())), gap);
    }

    private static int sum(Map<?, Integer> counts) {
        return counts.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** Every week in which the plan has a day. */
    static List<Week> weeks(Plan plan, ExtraCapacity extra) {
        var input = plan.input();
        var naive = Load.of(plan.naive());
        var weeks = new ArrayList<Week>();
        var last = IsoWeek.of(input.through());
        for (var week = IsoWeek.of(input.from()); week.compareTo(last) <= 0; week = IsoWeek
                .of(week.monday().plusDays(7))) {
            weeks.add(new Week(week.toString(), week.monday(), plan.load().inShop(week), naive.inShop(week),
                    input.shop().in(week), extra.shop().getOrDefault(week, 0)));
        }
        return weeks;
    }

    static List<MissingRack> racks(ExtraCapacity extra) {
        return extra.racks().entrySet().stream().map(entry -> new MissingRack(entry.getKey().day(),
                entry.getKey().vehicle(), entry.getKey().size(), entry.getValue())).toList();
    }
}
