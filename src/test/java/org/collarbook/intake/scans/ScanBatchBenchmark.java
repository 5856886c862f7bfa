package org.collarbook.intake.scans;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.IntStream;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A batch of 10,000 lines of all kinds, and the same again. {@code mvn -Pbench test -Dtest=ScanBatchBenchmark} */
@Tag("bench")
@RegisterTest
class ScanBatchBenchmark {

    private static final int CONTAINERS = 2_000;
    private static final Instant START = Instant.parse("2026-11-20T06:00:00Z");

    private final Given given;
    private final Scans scans;

    ScanBatchBenchmark(Api api, Given given) {
        this.given = given;
        this.scans = new Scans(api);
    }

    @Test
    void tenThousandLines() {
        var depot = given.site(null);
        var farm = given.site(given.customer());
        var containers = IntStream.range(0, CONTAINERS).mapToObj(i -> inDate()).toList();
        for (int run = 0; run < 3; run++) {
            var lines = new ArrayList<Object>();
            for (int i = 0; i < ScanBatchRequest.MOST_LINES; i++) {
                lines.add(line(containers.get(i % CONTAINERS), run * 20_000 + i, depot, farm));
            }
            var batch = Scans.batch(lines);
            figure("new", batch, "recorded");
            figure("again", batch, "repeated");
        }
    }

    private static Object line(UUID container, int second, UUID depot, UUID farm) {
        var at = START.plusSeconds(second).toString();
        return switch (second / CONTAINERS % 5) {
            case 0 -> Scans.line("RETURN", container, at, "toSite", depot, "empty", true);
            case 1, 3 -> Scans.fill(container, at);
            case 2 -> Scans.line("MOVEMENT", container, at, "toSite", farm);
            default -> Scans.line("MOVEMENT", container, at, "toSite", depot);
        };
    }

    private UUID inDate() {
        var body = Given.cylinder();
        body.put("manufactured", "6-20");
        return given.registered(body);
    }

    private void figure(String what, Object batch, String counted) {
        long start = System.nanoTime();
        var answer = scans.send(Role.CLERK, batch);
        double seconds = (System.nanoTime() - start) / 1e9;
        assertThat(answer.at("/counts/" + counted).asInt()).as(List.of(answer.status()).toString())
                .isEqualTo(ScanBatchRequest.MOST_LINES);
        System.out.printf(Locale.ROOT, "bench scan batch, %d lines %s: %.1f s, %.0f lines/s%n",
                ScanBatchRequest.MOST_LINES, what, seconds, ScanBatchRequest.MOST_LINES / seconds);
    }
}
