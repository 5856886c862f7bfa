package org.collarbook.schedule.forecast;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * What one method comes to. {@code overdueNow} of the first month should have been done before it. Of a requirement or a
 * container under {@code notForecast}, {@code now} gives no month today; {@code later} gives none from some day ahead.
 */
@Schema(name = "ForecastCurve")
record Curve(Choice method, int due, @Nullable BigDecimal cost, int unpriced, int overdueNow, int leaving,
        int methodNotAccepted, int noLastMethod, List<Month> months, List<Year> years, List<NotForecast> notForecast) {

    /** {@code cost} is of what has a price, and absent where no costs were told; {@code unpriced} counts what has none. */
    @Schema(name = "ForecastMonth")
    record Month(YearMonth month, int due, @Nullable BigDecimal cost, int unpriced, List<Done> work) {}

    /** How many of the month are met how; a written scheme has no method. */
    @Schema(name = "ForecastWork")
    record Done(Requirement requirement, @Nullable Method method, int count) {}

    @Schema(name = "ForecastYear")
    record Year(int year, int due, @Nullable BigDecimal cost, int unpriced, int leaving) {}

    @Schema(name = "ForecastSilence")
    record NotForecast(@Nullable Requirement requirement, WhyNot reason, int now, int later) {}

    static Curve of(Choice choice, Tally tally, YearMonth first, YearMonth last) {
        var months = new ArrayList<Month>();
        var years = new TreeMap<Integer, Year>();
        for (var month = first; !month.isAfter(last); month = month.plusMonths(1)) {
            var one = month(month, tally);
            months.add(one);
            int year = month.getYear();
            years.merge(year, new Year(year, one.due, one.cost, one.unpriced, tally.leavingIn(year)), Curve::sum);
        }
        var silent = tally.silent().entrySet().stream().map(one -> new NotForecast(one.getKey().requirement(),
                one.getKey().why(), one.getValue().now(), one.getValue().later())).toList();
        var all = years.values().stream().reduce(Curve::sum).orElseThrow();
        return new Curve(choice, all.due, all.cost, all.unpriced, tally.overdueNow(), tally.leaving(),
                tally.methodNotAcceptedCount(), tally.noLastMethodCount(), months, List.copyOf(years.values()),
                silent);
    }

    private static Month month(YearMonth month, Tally tally) {
        var counts = new TreeMap<Tally.Work, Integer>(Tally.Work.ORDER);
        boolean priced = tally.prices().currency() != null;
        var cost = BigDecimal.ZERO;
        int due = 0;
        int unpriced = 0;
        for (var one : tally.in(month).entrySet()) {
            var work = one.getKey();
            int count = one.getValue();
            var each = tally.prices().of(work.method(), work.size());
            cost = each == null ? cost : cost.add(each.multiply(BigDecimal.valueOf(count)));
            unpriced += priced && each == null ? count : 0;
            due += count;
            counts.merge(new Tally.Work(work.requirement(), work.method(), null), count, Integer::sum);
        }
        return new Month(month, due, priced ? cost : null, unpriced, counts.entrySet().stream()
                .map(one -> new Done(one.getKey().requirement(), one.getKey().method(), one.getValue())).toList());
    }

    private static Year sum(Year one, Year other) {
        return new Year(one.year, one.due + other.due,
                one.cost == null || other.cost == null ? null : one.cost.add(other.cost),
                one.unpriced + other.unpriced, one.leaving);
    }
}
