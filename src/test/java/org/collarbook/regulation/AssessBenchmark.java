package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/** Assessments a second on one core over the mix of a distributor's ledger; printed, never asserted on time. */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
public class AssessBenchmark {

    private static final int CONTAINERS = 4096;
    private final RuleBook book = RuleBookLoader.standard();
    private final List<Facts> fleet = fleet(new Random(20261125L));
    private final LocalDate asOf = LocalDate.of(2026, 11, 25);
    private int next;

    @Benchmark
    public Assessment assess() {
        next = (next + 1) & (CONTAINERS - 1);
        return book.assess(fleet.get(next), asOf);
    }

    static List<Facts> fleet(Random random) {
        List<Facts> fleet = new ArrayList<>(CONTAINERS);
        for (int i = 0; i < CONTAINERS; i++) {
            fleet.add(random.nextInt(10) == 0 ? tank(random) : cylinder(random));
        }
        return List.copyOf(fleet);
    }

    private static Facts tank(Random random) {
        return Facts.builder().jurisdiction(Jurisdiction.US).kind(ContainerKind.STATIONARY_TANK).specification(
                Specification.ASME).manufactured(YearMonth.of(1990 + random.nextInt(30), 6)).waterCapacity(WaterCapacity
                        .gallons("500"))
                .servicePressure(new BigDecimal(250)).marksLegible(true).ownerConsent(true).service(
                        Service.LPG)
                .condition(Condition.SOUND).holds(List.of()).requalifications(List.of()).build();
    }

    private static Facts cylinder(Random random) {
        String[] stamps = {"DOT-4BA240", "DOT-4BW240", "DOT-4E240", "DOT-4BA240", "TC-4BAM17", "DOT-4B240ET"};
        YearMonth made = YearMonth.of(1995 + random.nextInt(28), 1 + random.nextInt(12));
        List<Requalification> marks = new ArrayList<>();
        Method[] methods = {Method.EXTERNAL_VISUAL, Method.VOLUMETRIC_EXPANSION, Method.PROOF_PRESSURE};
        for (YearMonth month = made.plusYears(12); month.getYear() < 2026; month = month.plusYears(5)) {
            marks.add(Requalification.passed(month, methods[random.nextInt(3)], new Rin("B045")));
        }
        FactsBuilder facts = Facts.builder().jurisdiction(Jurisdiction.US).kind(ContainerKind.CYLINDER).specification(
                Specification.parse(stamps[random.nextInt(stamps.length)])).manufactured(made)
                .waterCapacity(WaterCapacity
                        .pounds("47.6"))
                .coated(true).marksLegible(true).service(Service.LPG).requalifications(marks);
        facts.ownerConsent(random.nextInt(20) > 0 ? Boolean.TRUE : null);
        facts.condition(random.nextInt(10) > 0 ? Condition.SOUND : null).holds(List.of());
        if (random.nextInt(3) == 0) {
            facts.filledOn(LocalDate.of(2019 + random.nextInt(8), 5, 20));
        }
        return facts.build();
    }

    @Test
    @Tag("bench")
    void assessments() throws RunnerException {
        Collection<RunResult> results = new Runner(
                new OptionsBuilder().include(AssessBenchmark.class.getName()).forks(0)
                        .threads(1).warmupIterations(3).warmupTime(TimeValue.seconds(2)).measurementIterations(5)
                        .measurementTime(
                                TimeValue.seconds(2))
                        .addProfiler(GCProfiler.class).build())
                .run();
        assertThat(results).hasSize(1);
        results.forEach(
                result -> System.out.printf("assessments per second on one core: %,.0f%n", result.getPrimaryResult()
                        .getScore()));
    }

    /** By the thread's own processor time, which other work on the machine disturbs less than the clock on the wall. */
    @Test
    @Tag("bench")
    void assessmentsByProcessorTime() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long answers = 0;
        double best = 0;
        for (int round = 0; round < 12; round++) {
            long start = threads.getCurrentThreadCpuTime();
            for (int i = 0; i < 1 << 20; i++) {
                answers += book.assess(fleet.get(i & (CONTAINERS - 1)), asOf).requirements().size();
            }
            best = Math.max(best, (1 << 20) * 1e9 / (threads.getCurrentThreadCpuTime() - start));
        }
        assertThat(answers).isPositive();
        System.out.printf("assessments per second of processor time, best of 12 rounds: %,.0f%n", best);
    }
}
