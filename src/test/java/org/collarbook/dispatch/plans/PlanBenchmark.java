package org.collarbook.dispatch.plans;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.dispatch.plans.PlanInput.ShopCapacity;
import org.collarbook.platform.BulkCopy;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.springframework.test.context.TestPropertySource;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * A plan of 100,000 cylinders on 300 routes over 18 months, from the tables to the tables, with a shop that takes 105 % of
 * what the mean week needs. {@code mvn -Pbench test -Dtest=PlanBenchmark}.
 */
@Tag("bench")
@RegisterTest
@TestPropertySource(properties = "collarbook.bench=plans")
class PlanBenchmark {

    private static final int CYLINDERS = 100_000;
    private static final int WEEKS = 78;

    private final ReadInput input;
    private final PullPlans plans;
    private final WritePlan write;
    private final BulkCopy copy;
    private final TransactionTemplate transaction;

    PlanBenchmark(ReadInput input, PullPlans plans, WritePlan write, BulkCopy copy, TransactionTemplate transaction) {
        this.input = input;
        this.plans = plans;
        this.write = write;
        this.copy = copy;
        this.transaction = transaction;
    }

    @Test
    void aYearAndAHalfOfALargeFleet() throws IOException {
        transaction.executeWithoutResult(status -> new LargeFleet(1, CYLINDERS).into(copy));
        int perWeek = CYLINDERS * 105 / 100 / WEEKS;
        var asked = new Asked(TestClock.TODAY, 18, null, new ShopCapacity(perWeek, new TreeMap<>()));
        plans.queue(asked, new Caller(new UUID(0, 1), "bench", Set.of(Role.DISPATCHER), new CustomerScope.Everyone()));
        var claim = plans.jobs().claim().orElseThrow();
        long start = System.nanoTime();
        var read = input.read(asked);
        double reading = seconds(start);
        start = System.nanoTime();
        long processor = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        var plan = Plan.of(read.input());
        double solving = seconds(start);
        double computing = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - processor) / 1e9;
        start = System.nanoTime();
        long gap = plan.gap();
        double proving = seconds(start);
        start = System.nanoTime();
        var made = MadePlan.of(plan, read.beside());
        double summing = seconds(start);
        start = System.nanoTime();
        assertThat(write.finish(claim, made)).isTrue();
        double writing = seconds(start);
        var summary = made.summary();
        System.out.printf(Locale.ROOT, "bench plan of %d cylinders, 300 routes, 18 months, shop %d a week: read %.1f s,"
                + " solve %.1f s (%.1f s of a processor), proof %.2f s (gap %d), what is missing and sums %.1f s, write %.1f s, peak memory of the"
                + " process %d MiB%n", read.input().cylinders().size(), perWeek, reading, solving, computing, proving,
                gap, summing,
                writing, peakMebibytes());
        System.out.printf(Locale.ROOT,
                "bench plan beside the last visit before: planned %d, left over %d %s, missing %s;"
                        + " peak week %d / %d, weeks over %d / %d, racks over %d / %d, wasted months a cylinder %s / %s,"
                        + " in all %s / %s%n",
                summary.planned(), summary.remainder(), summary.remainderBecause(),
                summary.missing(), summary.plan().peakWeek(), summary.lastVisitBefore().peakWeek(),
                summary.plan().weeksOverCapacity(), summary.lastVisitBefore().weeksOverCapacity(),
                summary.plan().racksOverCapacity(), summary.lastVisitBefore().racksOverCapacity(),
                summary.plan().meanWastedMonths(), summary.lastVisitBefore().meanWastedMonths(),
                summary.plan().wastedMonths(), summary.lastVisitBefore().wastedMonths());
        assertThat(gap).isZero();
        assertThat(summary.plan().weeksOverCapacity() + summary.plan().racksOverCapacity()).isZero();
    }

    private static double seconds(long since) {
        return (System.nanoTime() - since) / 1e9;
    }

    /** Heap, native memory of the solver and all else of this process, which also runs the tests. */
    private static long peakMebibytes() throws IOException {
        try (var lines = Files.lines(Path.of("/proc/self/status"))) {
            return lines.filter(line -> line.startsWith("VmHWM")).findAny()
                    .map(line -> Long.parseLong(line.replaceAll("[^0-9]", "")) / 1024).orElseThrow();
        }
    }
}
