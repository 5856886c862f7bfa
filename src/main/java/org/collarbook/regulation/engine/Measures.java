package org.collarbook.regulation.engine;

import static org.collarbook.regulation.engine.Tests.verdict;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.temporal.ChronoUnit;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.function.LongPredicate;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** The conditions that a rule can set on sizes, pressures and ages. */
public final class Measures {

    private Measures() {}

    public static Test capacityAtMost(WaterCapacity limit) {
        return capacity(limit, difference -> difference <= 0);
    }

    /** No when more than this is recorded; where no capacity is, this alone does not matter. */
    public static Test statedCapacityAtMost(WaterCapacity limit) {
        Test known = capacityAtMost(limit);
        return new Test(known.fact(), known.missing(),
                subject -> verdict(known.check().on(subject) != Verdict.NO));
    }

    public static Test capacityOver(WaterCapacity limit) {
        return capacity(limit, difference -> difference > 0);
    }

    public static Test capacityUnder(WaterCapacity limit) {
        return capacity(limit, difference -> difference < 0);
    }

    public static Test capacityAtLeast(WaterCapacity limit) {
        return capacity(limit, difference -> difference >= 0);
    }

    /** Within both, in one question. */
    public static Test capacityBetween(WaterCapacity least, WaterCapacity most) {
        BigDecimal from = least.toPounds();
        BigDecimal to = most.toPounds();
        return new Test(Fact.WATER_CAPACITY, ReasonCode.MISSING_WATER_CAPACITY, subject -> {
            WaterCapacity capacity = subject.facts.waterCapacity();
            if (capacity == null) {
                return Verdict.UNKNOWN;
            }
            BigDecimal pounds = capacity.toPounds();
            return verdict(pounds.compareTo(from) >= 0 && pounds.compareTo(to) <= 0);
        });
    }

    private static Test capacity(WaterCapacity limit, IntPredicate holds) {
        BigDecimal pounds = limit.toPounds();
        return new Test(Fact.WATER_CAPACITY, ReasonCode.MISSING_WATER_CAPACITY, subject -> {
            WaterCapacity capacity = subject.facts.waterCapacity();
            return capacity == null ? Verdict.UNKNOWN : verdict(holds.test(capacity.toPounds().compareTo(pounds)));
        });
    }

    public static Test pressureAtLeast(BigDecimal psig) {
        return pressure(psig, difference -> difference >= 0);
    }

    public static Test pressureAtMost(BigDecimal psig) {
        return pressure(psig, difference -> difference <= 0);
    }

    private static Test pressure(BigDecimal psig, IntPredicate holds) {
        return new Test(Fact.SERVICE_PRESSURE, ReasonCode.MISSING_SERVICE_PRESSURE, subject -> {
            BigDecimal pressure = pressure(subject.facts);
            return pressure == null ? Verdict.UNKNOWN : verdict(holds.test(pressure.compareTo(psig)));
        });
    }

    /** The stamped pressures of low-pressure cylinders, made once. */
    private static final BigDecimal[] STAMPED = IntStream.rangeClosed(0, 500).mapToObj(BigDecimal::valueOf).toArray(
            BigDecimal[]::new);
    private static final BigDecimal OF_3 = new BigDecimal(1800);
    private static final BigDecimal OF_8 = new BigDecimal(250);

    /** As recorded or as stamped with the specification, the lower; else as 49 CFR 173.301a(b) designates it. */
    static @Nullable BigDecimal pressure(Facts facts) {
        Specification specification = facts.specification();
        BigDecimal recorded = facts.servicePressure();
        Integer stamped = specification == null ? null : specification.servicePressurePsig();
        if (stamped != null) {
            BigDecimal mark = stamped >= 0 && stamped < STAMPED.length
                    ? STAMPED[stamped]
                    : BigDecimal.valueOf(stamped);
            return recorded == null ? mark : recorded.min(mark);
        }
        if (recorded != null || specification == null) {
            return recorded;
        }
        return switch (specification.family()) {
            case "3", "3E" -> OF_3;
            case "8" -> OF_8;
            default -> null;
        };
    }

    public static Test madeFrom(YearMonth month) {
        return made(is -> !is.isBefore(month));
    }

    public static Test madeBefore(YearMonth month) {
        return made(is -> is.isBefore(month));
    }

    private static Test made(Predicate<YearMonth> holds) {
        return new Test(Fact.MANUFACTURED, ReasonCode.MISSING_MANUFACTURED, subject -> {
            YearMonth made = subject.manufactured;
            return made == null ? Verdict.UNKNOWN : verdict(holds.test(made));
        });
    }

    /** How old it was in the month of the mark that is judged. */
    public static Test markAgeUnder(int months) {
        return markAge(age -> age < months);
    }

    public static Test markAgeAtLeast(int months) {
        return markAge(age -> age >= months);
    }

    private static Test markAge(LongPredicate holds) {
        return new Test(Fact.MANUFACTURED, ReasonCode.MISSING_MANUFACTURED, subject -> {
            Requalification mark = subject.mark();
            if (mark == null || subject.manufactured == null) {
                return mark == null ? Verdict.NO : Verdict.UNKNOWN;
            }
            return verdict(holds.test(subject.manufactured.until(mark.month(), ChronoUnit.MONTHS)));
        });
    }

    public static Test percentFullAtMost(BigDecimal percent) {
        return new Test(Fact.MOVE, ReasonCode.MISSING_PERCENT_FULL, subject -> {
            BigDecimal full = subject.percentFull();
            return full == null ? Verdict.UNKNOWN : verdict(full.compareTo(percent) <= 0);
        });
    }

    /**
     * Out of service for less than this, or tested in a later month than that in which it was over; a stop that is not
     * recorded has not happened.
     */
    public static Test outOfServiceUnder(int months, Set<Method> tests) {
        return new Test(Fact.OUT_OF_SERVICE, ReasonCode.MISSING_RECORD, subject -> {
            LocalDate since = subject.outOfServiceSince;
            return verdict(since == null || since.plusMonths(months).isAfter(subject.asOf)
                    || subject.testedSince(YearMonth.from(since.plusMonths(months)).plusMonths(1), tests));
        }).after(months);
    }
}
