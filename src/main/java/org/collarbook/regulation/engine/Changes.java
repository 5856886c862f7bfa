package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.stream.Stream;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.StandingHold;
import org.jspecify.annotations.Nullable;

/** The days on which the same facts may be judged otherwise for themselves. */
record Changes(Facts facts, LocalDate day) {

    @Nullable
    LocalDate of(List<Rule> rules) {
        return Stream.of(aheadDays(), lives(rules), stops(rules)).flatMap(days -> days)
                .filter(one -> one != null && one.isAfter(day)).min(LocalDate::compareTo).orElse(null);
    }

    /** What is dated ahead counts from its day on; a permit is over on the day after it expires. */
    private Stream<@Nullable LocalDate> aheadDays() {
        Condition condition = facts.condition();
        Stream<@Nullable LocalDate> single = Stream.of(firstOf(facts.manufactured()), facts.filledOn(),
                facts.emptiedOn(), condition == null ? null : condition.rejectedOn(),
                condition == null ? null : condition.condemnedOn(),
                facts.permit() == null || facts.permit().expires() == null
                        ? null
                        : facts.permit().expires().plusDays(1));
        return Stream.concat(single, Stream.concat(
                orNone(facts.requalifications()).stream().map(Requalification::month).map(Changes::firstOf),
                orNone(facts.holds()).stream().map(StandingHold::placedOn)));
    }

    private Stream<@Nullable LocalDate> lives(List<Rule> rules) {
        YearMonth made = facts.manufactured();
        return made == null
                ? Stream.empty()
                : rules.stream().flatMap(rule -> Stream.of(rule.values)).map(value -> value.effect)
                        .filter(Effect.ServiceLife.class::isInstance).map(Effect.ServiceLife.class::cast)
                        .map(life -> firstOf(made.plusMonths(life.months() + 1)));
    }

    /** After a stop of a year, whatever the rule's own number of months, the tank is looked at each month. */
    private Stream<@Nullable LocalDate> stops(List<Rule> rules) {
        LocalDate since = facts.outOfServiceSince();
        return since == null || rules.isEmpty() ? Stream.empty() : Stream.of(since.plusYears(1));
    }

    private static @Nullable LocalDate firstOf(@Nullable YearMonth month) {
        return month == null ? null : month.atDay(1);
    }

    private static <T> List<T> orNone(@Nullable List<T> list) {
        return list == null ? List.of() : list;
    }
}
