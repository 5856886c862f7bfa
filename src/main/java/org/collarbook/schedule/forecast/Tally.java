package org.collarbook.schedule.forecast;

import java.time.YearMonth;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;

import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** Counts what is told of the containers, one after the other; it grows with the months and not with the fleet. */
final class Tally implements Sink {

    /** What costs the same: the size is that of the price, null where the price is the same for all. */
    record Work(Requirement requirement, @Nullable Method method, @Nullable String size) {

        static final Comparator<Work> ORDER = Comparator.comparing(Work::requirement)
                .thenComparing(Work::method, Comparator.nullsLast(Comparator.naturalOrder()))
                .thenComparing(Work::size, Comparator.nullsLast(Comparator.naturalOrder()));
    }

    record Silence(@Nullable Requirement requirement, WhyNot why) {

        static final Comparator<Silence> ORDER = Comparator
                .comparing(Silence::requirement, Comparator.nullsFirst(Comparator.<Requirement>naturalOrder()))
                .thenComparing(Silence::why);
    }

    /** How many from today, and how many from a day ahead. */
    record Counts(int now, int later) {

        private Counts plus(Counts other) {
            return new Counts(now + other.now, later + other.later);
        }
    }

    private final YearMonth first;
    private final @Nullable Requirement only;
    private final Prices prices;
    private final Map<YearMonth, Map<Work, Integer>> months = new TreeMap<>();
    private final Map<Integer, Integer> leaving = new TreeMap<>();
    private final Map<Silence, Counts> silent = new TreeMap<>(Silence.ORDER);
    private String size = "";
    private int overdueNow;
    private int methodNotAccepted;
    private int noLastMethod;

    Tally(YearMonth first, @Nullable Requirement only, Prices prices) {
        this.first = first;
        this.only = only;
        this.prices = prices;
    }

    /** What is told next is of a container of this size. */
    Tally of(String sizeOfContainer) {
        size = sizeOfContainer;
        return this;
    }

    @Override
    public void done(YearMonth month, Requirement requirement, @Nullable Method method, boolean late) {
        if (isAskedFor(requirement)) {
            // where it is yesterday still, the month before the first may not be over
            months.computeIfAbsent(month.isBefore(first) ? first : month, next -> new HashMap<>())
                    .merge(new Work(requirement, method, prices.sizeThatMatters(method, size)), 1, Integer::sum);
            overdueNow += late ? 1 : 0;
        }
    }

    @Override
    public void silent(@Nullable Requirement requirement, WhyNot why, boolean later) {
        if (requirement == null || isAskedFor(requirement)) {
            silent.merge(new Silence(requirement, why), later ? new Counts(0, 1) : new Counts(1, 0), Counts::plus);
        }
    }

    @Override
    public void leaves(YearMonth month) {
        leaving.merge(month.getYear(), 1, Integer::sum);
    }

    @Override
    public void methodNotAccepted() {
        methodNotAccepted++;
    }

    @Override
    public void noLastMethod() {
        noLastMethod++;
    }

    private boolean isAskedFor(Requirement requirement) {
        return only == null || only == requirement;
    }

    Prices prices() {
        return prices;
    }

    Map<Work, Integer> in(YearMonth month) {
        return months.getOrDefault(month, Map.of());
    }

    int leavingIn(int year) {
        return leaving.getOrDefault(year, 0);
    }

    int leaving() {
        return leaving.values().stream().mapToInt(Integer::intValue).sum();
    }

    Map<Silence, Counts> silent() {
        return silent;
    }

    int overdueNow() {
        return overdueNow;
    }

    int methodNotAcceptedCount() {
        return methodNotAccepted;
    }

    int noLastMethodCount() {
        return noLastMethod;
    }
}
