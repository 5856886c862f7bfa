package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Random;
import java.util.UUID;

import org.assertj.core.groups.Tuple;
import org.collarbook.access.Role;
import org.collarbook.compliance.AsKnown.Asked;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Many containers replayed at once are each what the replay of that one says. */
@RegisterTest
@Import(RandomFleet.class)
class ReplayOfManyTests {

    private static final long SEED = 20270331;
    private static final int CONTAINERS = 120;

    private final RandomFleet fleet;
    private final AsKnown asKnown;
    private final Api api;
    private final TestClock clock;
    private final JdbcClient jdbc;

    ReplayOfManyTests(RandomFleet fleet, AsKnown asKnown, Api api, TestClock clock, JdbcClient jdbc) {
        this.fleet = fleet;
        this.asKnown = asKnown;
        this.api = api;
        this.clock = clock;
        this.jdbc = jdbc;
    }

    /** The holds of the fleet are recorded by the database's clock. */
    private Instant allRecorded() {
        var wall = Clock.systemUTC().instant();
        var now = (wall.isAfter(clock.instant()) ? wall : clock.instant()).plusSeconds(60);
        clock.set(now);
        return now;
    }

    @Test
    void eachIsWhatItsOwnReplaySays() {
        System.out.println("seed " + SEED);
        var random = new Random(SEED);
        var ids = fleet.of(CONTAINERS, SEED);
        var last = allRecorded();
        int replayed = 0;
        for (var moment : List.of(Instant.parse("2026-11-25T12:00:00Z"), last)) {
            var asked = ids.stream().map(id -> new Asked(id, LocalDate.of(2024, 1, 1).plusDays(random.nextInt(2000))))
                    .toList();
            var each = asKnown.each(asked, moment);
            for (int i = 0; i < asked.size(); i++) {
                var day = asked.get(i).day();
                var id = asked.get(i).container();
                var one = asKnown.container(id, day, moment).orElseThrow();
                var found = each.stream().filter(told -> told.container().id().equals(id)).toList();
                assertThat(found).hasSize(1);
                assertThat(found.getFirst().container()).as("seed %s, %s on %s", SEED, id, day).isEqualTo(one);
                var told = asKnown.book(moment).rules().assess(one.facts(), day);
                var clocks = found.getFirst().clocks();
                assertThat(clocks).extracting(ReplayedClock::requirement, ReplayedClock::jurisdiction,
                        ReplayedClock::due, ReplayedClock::rule)
                        .containsExactlyInAnyOrderElementsOf(told.requirements().stream()
                                .map(clock -> Tuple.tuple(clock.requirement(),
                                        clock.jurisdiction(), RequirementRow.due(clock), clock.ruleId()))
                                .toList());
                assertThat(clocks.getFirst().status()).isEqualTo(told.status());
                replayed++;
            }
        }
        assertThat(replayed).isEqualTo(2 * CONTAINERS);
    }

    /** What is stored is the schedule of today by all that is known now, so both files have the same bytes. */
    @Test
    void theScheduleOfTodayIsTheStoredOne() {
        var ids = fleet.of(CONTAINERS, SEED + 1);
        var today = allRecorded().toString().substring(0, 10);
        long lines = 0;
        for (var site : jdbc.sql("select distinct site_id from placement where container_id = any (?)")
                .param(ids.toArray(UUID[]::new)).query(UUID.class).list()) {
            for (var list : new String[]{"/api/schedule?format=csv&site=", "/api/schedule?size=1000&site=",
                    "/api/schedule/undetermined?size=1000&site="}) {
                var stored = api.as(Role.CLERK).get(list + site).expect(200).body();
                assertThat(api.as(Role.CLERK).get(list + site + "&asOf=" + today).expect(200).body()).as(list)
                        .isEqualTo(stored);
                lines += list.contains("csv") ? stored.lines().count() - 1 : 0;
            }
        }
        assertThat(lines).isGreaterThan(CONTAINERS / 3);
    }
}
