package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.custody.GaugeReadings;
import org.collarbook.custody.ReadingSource;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * A portal follows while several write at once, some in transactions that end late, and days go by. Whenever all are done,
 * its copy is what a first reading would be. The seed is the parameter.
 */
@RegisterTest
class PortalChangesPropertyTests {

    private static final int WRITERS = 3;
    private static final int EACH = 8;
    private static final Caller BY = new Caller(UUID.randomUUID(), "test", Set.of(Role.FILLER),
            CustomerScope.EVERYONE);

    private final Api api;
    private final Given given;
    private final TestClock clock;
    private final GaugeReadings readings;
    private final TransactionTemplate transaction;

    PortalChangesPropertyTests(Api api, Given given, TestClock clock, GaugeReadings readings,
            TransactionTemplate transaction) {
        this.api = api;
        this.given = given;
        this.clock = clock;
        this.readings = readings;
        this.transaction = transaction;
    }

    /** Writes about containers of its own. */
    private final class Writer implements Callable<Void> {

        private final Random random;
        private final UUID customer;
        private final List<UUID> sites;
        private final List<UUID> tanks = new ArrayList<>();
        private Instant now = Instant.parse("2026-11-20T06:00:00Z");

        Writer(Random random, UUID customer, List<UUID> sites) {
            this.random = random;
            this.customer = customer;
            this.sites = sites;
            for (int i = 0; i < 3; i++) {
                comes();
            }
        }

        private void comes() {
            var tank = given.registered(PortalTank.body());
            tanks.add(tank);
            moves(tank);
        }

        private Instant next() {
            now = now.plusSeconds(60);
            return now;
        }

        private void moves(UUID tank) {
            var to = sites.get(random.nextInt(sites.size()));
            api.as(Role.YARD).post("/api/movements", Map.of("containerId", tank, "toSite", to, "occurredAt", next()));
        }

        private void isGaugedAndEndsLate(UUID tank) {
            transaction.executeWithoutResult(open -> {
                readings.record(tank, BigDecimal.valueOf(random.nextInt(100)), next(), ReadingSource.TELEMETRY, BY);
                pause(100 + random.nextInt(300));
            });
        }

        private void rename() {
            var site = sites.get(random.nextInt(2));
            var clerk = api.as(Role.CLERK);
            var body = Given.depot();
            body.put("kind", "CUSTOMER");
            body.put("customerId", customer);
            // another writer may have been faster
            clerk.ifMatch(clerk.get("/api/sites/" + site).expect(200)).put("/api/sites/" + site, body);
        }

        @Override
        public Void call() {
            for (int i = 0; i < EACH; i++) {
                var tank = tanks.get(random.nextInt(tanks.size()));
                switch (random.nextInt(8)) {
                    case 0, 1 -> moves(tank);
                    case 2, 3, 4 -> isGaugedAndEndsLate(tank);
                    case 5 -> api.as(Role.YARD).post("/api/containers/" + tank + "/holds", Map.of("reason", "LOST"))
                            .expect(201);
                    case 6 -> rename();
                    default -> comes();
                }
            }
            return null;
        }
    }

    private static void pause(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void aCopyThatFollowsIsWhatAFirstReadingWouldBe(long seed) throws Exception {
        var random = new Random(seed);
        var customer = given.customer();
        var sites = List.of(given.site(customer), given.site(customer), given.site(given.customer()), given.site(null));
        var writers = new ArrayList<Writer>();
        for (int i = 0; i < WRITERS; i++) {
            writers.add(new Writer(new Random(random.nextLong()), customer, sites));
        }
        var portal = api.asPortalOf(new CustomerId(customer));
        var copy = PortalCopy.whole(portal, 2);
        try (var threads = Executors.newFixedThreadPool(WRITERS)) {
            for (int day = 0; day < 3; day++) {
                var running = new ArrayList<Future<Void>>();
                writers.forEach(writer -> running.add(threads.submit(writer)));
                int read = 0;
                while (running.stream().anyMatch(writer -> !writer.isDone())) {
                    copy.follow(1 + random.nextInt(4));
                    read++;
                }
                for (var writer : running) {
                    writer.get();
                }
                // before the day that would tell much of it again, and after
                for (int then = day; then <= day + 1; then++) {
                    clock.set(TestClock.TODAY.plusDays(then));
                    copy.follow(1 + random.nextInt(4));
                    assertThat(copy.containers()).as("seed %d, day %d, after %d readings", seed, then, read)
                            .isEqualTo(PortalCopy.whole(portal, 100).containers());
                }
            }
        }
    }
}
