package org.collarbook.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.IntFunction;

import javax.sql.DataSource;

import org.collarbook.access.OneRowDoor;
import org.collarbook.access.Role;
import org.collarbook.compliance.RecomputeNow;
import org.collarbook.schedule.WholeSchedule;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.postgresql.PGConnection;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * The register at size, each figure beside the plainest way to do as much in the same run.
 * {@code mvn -Pbench verify -Dtest=RegisterBenchmark -Dbench.containers=1000000}
 */
@Tag("bench")
@RegisterTest
@Import({OneRowDoor.class, RecomputeNow.class, WholeSchedule.class})
class RegisterBenchmark {

    private static final int CONTAINERS = Integer.getInteger("collarbook.bench.containers", 1_000_000);
    private static final int CALLS = 20_000;
    private final Api api;
    private final JdbcClient jdbc;
    private final DataSource dataSource;
    private final Flyway flyway;
    private final RecomputeNow recompute;
    private final WholeSchedule schedule;
    private final Fleet fleet;
    private final HttpClient http = HttpClient.newHttpClient();
    private final Random random = new Random(7);

    RegisterBenchmark(Api api, JdbcClient jdbc, DataSource dataSource, Flyway flyway, RecomputeNow recompute,
            WholeSchedule schedule) {
        this.api = api;
        this.jdbc = jdbc;
        this.fleet = new Fleet(jdbc, CONTAINERS);
        this.dataSource = dataSource;
        this.flyway = flyway;
        this.recompute = recompute;
        this.schedule = schedule;
    }

    @Test
    void atSize() throws Exception {
        fleet.write();
        long started = System.nanoTime();
        recompute.run();
        Figures.print("recompute: %,d containers, %,.0f a second", CONTAINERS,
                Figures.perSecond(CONTAINERS, System.nanoTime() - started));
        try (var owner = flyway.getConfiguration().getDataSource().getConnection();
                var statement = owner.createStatement()) {
            statement.execute("vacuum analyze");
        }
        fillCheck();
        pullList();
        export();
    }

    private void fillCheck() throws Exception {
        IntFunction<String> check = n -> "/api/fill-check?tag=BT" + n + "&specificGravity=0.508";
        IntFunction<String> row = n -> "/bench/one-row?tag=BT" + n;
        calls(check, Role.FILLER, CALLS / 4);
        calls(row, Role.FILLER, CALLS / 4);
        long rowTime = time(row);
        var nanos = calls(check, Role.FILLER, CALLS);
        long checkTime = Arrays.stream(nanos).sum();
        Figures.print("fill check over HTTP, one client: p50 %,.0f µs, p99 %,.0f µs, %,.0f a second;"
                + " one row by JDBC over HTTP %,.0f a second; ratio %.2f", Figures.percentile(nanos, 0.5),
                Figures.percentile(nanos, 0.99), Figures.perSecond(CALLS, checkTime),
                Figures.perSecond(CALLS, rowTime), (double) rowTime / checkTime);
    }

    private long time(IntFunction<String> path) throws Exception {
        return Arrays.stream(calls(path, Role.FILLER, CALLS)).sum();
    }

    private long[] calls(IntFunction<String> path, Role role, int count) throws Exception {
        var key = api.keyOf(role);
        var nanos = new long[count];
        for (int i = 0; i < count; i++) {
            var request = HttpRequest.newBuilder(URI.create(api.baseUrl() + path.apply(random.nextInt(CONTAINERS))))
                    .header("Authorization", "Bearer " + key).build();
            long before = System.nanoTime();
            var answer = http.send(request, HttpResponse.BodyHandlers.ofByteArray());
            nanos[i] = System.nanoTime() - before;
            if (answer.statusCode() != 200) {
                throw new AssertionError(answer.statusCode() + " to " + request.uri());
            }
        }
        return nanos;
    }

    /** A route of 2,000 containers at 20 sites, beside keyset pages of as many rows from anywhere in the register. */
    private void pullList() throws Exception {
        int routes = fleet.routes();
        IntFunction<String> list = n -> "/api/routes/BR" + n % routes + "/pull-list?visit=2026-12-03";
        int rows = Math.min(1000, api.as(Role.DISPATCHER).get(list.apply(0)).expect(200).at("/count").asInt());
        IntFunction<String> page = n -> "/api/schedule?size=" + rows + "&from=" + (2015 + n % 15) + "-0" + (1 + n % 9);
        calls(list, Role.DISPATCHER, 300);
        calls(page, Role.DISPATCHER, 300);
        var lists = calls(list, Role.DISPATCHER, 1000);
        var pages = calls(page, Role.DISPATCHER, 1000);
        Figures.print("one route's pull list over HTTP, %,d lines of 2,000 containers among %,d: p50 %,.0f µs,"
                + " p99 %,.0f µs; a keyset page of as many rows p50 %,.0f µs, p99 %,.0f µs; ratio of p50 %.2f, of p99"
                + " %.2f", rows, CONTAINERS, Figures.percentile(lists, 0.5), Figures.percentile(lists, 0.99),
                Figures.percentile(pages, 0.5), Figures.percentile(pages, 0.99),
                Figures.percentile(lists, 0.5) / Figures.percentile(pages, 0.5),
                Figures.percentile(lists, 0.99) / Figures.percentile(pages, 0.99));
    }

    private void export() throws Exception {
        long rows = jdbc.sql("select count(*) from requirement where due is not null").query(Long.class).single();
        copy();
        long plain = copy();
        long served = csv();
        served = Math.min(served, csv());
        Figures.print("schedule as CSV: %,d rows, %,.0f rows a second; COPY of the same query %,.0f; ratio %.2f", rows,
                Figures.perSecond(rows, served), Figures.perSecond(rows, plain), (double) plain / served);
        heap(rows);
    }

    /** What is reachable while the file is sent, by collections one after another; not timed. */
    private void heap(long rows) throws Exception {
        long before = reachable();
        var most = new AtomicLong();
        var sent = new AtomicBoolean();
        var sampling = Thread.ofPlatform().start(() -> {
            while (!sent.get()) {
                most.accumulateAndGet(reachable(), Math::max);
            }
        });
        csv();
        sent.set(true);
        sampling.join();
        Figures.print("schedule as CSV, heap in use while %,d rows are sent: at most %,d MiB, of which %,d MiB before",
                rows, most.get() >> 20, before >> 20);
    }

    private static long reachable() {
        System.gc();
        return Runtime.getRuntime().totalMemory() - Runtime.getRuntime().freeMemory();
    }

    private long copy() throws SQLException, IOException {
        try (var connection = dataSource.getConnection()) {
            long before = System.nanoTime();
            connection.unwrap(PGConnection.class).getCopyAPI().copyOut(schedule.copy(),
                    OutputStream.nullOutputStream());
            return System.nanoTime() - before;
        }
    }

    private long csv() throws Exception {
        var request = HttpRequest.newBuilder(URI.create(api.baseUrl() + "/api/schedule?format=csv"))
                .header("Authorization", "Bearer " + api.keyOf(Role.CLERK)).build();
        long before = System.nanoTime();
        try (var body = http.send(request, HttpResponse.BodyHandlers.ofInputStream()).body()) {
            body.transferTo(OutputStream.nullOutputStream());
        }
        return System.nanoTime() - before;
    }
}
