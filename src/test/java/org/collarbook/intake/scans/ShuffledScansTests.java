package org.collarbook.intake.scans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.intake.scans.Scans.batch;
import static org.collarbook.intake.scans.Scans.fill;
import static org.collarbook.intake.scans.Scans.line;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.stream.IntStream;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Whatever the order in which lines are sent, the end is that of the order in which they happened. */
@RegisterTest
class ShuffledScansTests {

    private static final int CONTAINERS = 6;
    private static final int LINES = 80;

    /** What a container came to; and what else, where all lines come together: where each step was known to begin. */
    private static final String LAWFUL = """
            select concat_ws(E'\\n', (select site_id || ' ' || since from placement where container_id = c.id),
              (select string_agg(occurred_at || ' ' || to_site_id, ',' order by occurred_at) from movement
                where container_id = c.id),
              (select string_agg(filled_at || ' ' || filled_on || ' ' || coalesce(net_lb, 0) || refused_for::text,
                ',' order by filled_at) from fill where container_id = c.id),
              (select string_agg(emptied_at || ' ' || emptied_on, ',' order by emptied_at) from emptying
                where container_id = c.id),
              (select string_agg(requirement || standing || decisive || coalesce(due::text, '') || filled_in_time
                || reasons::text || coalesce(site_id::text, ''), ',' order by requirement, jurisdiction) from requirement
                where container_id = c.id))
            from container c where id = ?""";
    private static final String HELD = """
            select concat_ws(E'\\n', (select string_agg(reason || occurred_at, ',' order by occurred_at, reason) from hold
                where container_id = c.id),
              (select string_agg(occurred_at || ' ' || coalesce(from_site_id::text, ''), ',' order by occurred_at)
                from movement where container_id = c.id),
              (select string_agg(filled_at || ' ' || site_id, ',' order by filled_at) from fill where container_id = c.id),
              (select string_agg(kind || occurred_at, ',' order by seq) from journal where container_id = c.id
                and kind in ('MOVED', 'HELD')))
            from container c where id = ?""";

    private final Given given;
    private final Scans scans;
    private final JdbcClient jdbc;

    ShuffledScansTests(Api api, Given given, JdbcClient jdbc) {
        this.given = given;
        this.scans = new Scans(api);
        this.jdbc = jdbc;
    }

    private List<UUID> fleet(UUID depot) {
        return IntStream.range(0, CONTAINERS).mapToObj(i -> {
            var body = Given.cylinder();
            body.put("manufactured", i == 0 ? "5-04" : "6-20");
            body.put("tare", i == 1 ? null : "TW 17.0");
            var id = given.registered(body);
            given.moved(id, depot, "2026-11-09T12:00:00Z");
            return id;
        }).toList();
    }

    private List<UUID> sites() {
        return List.of(given.site(null), given.site(null), given.site(null));
    }

    private static List<Map<String, @Nullable Object>> lines(long seed, List<UUID> fleet, List<UUID> sites,
            boolean holds) {
        var random = new Random(seed);
        var lines = new ArrayList<Map<String, @Nullable Object>>();
        for (int i = 0; i < LINES; i++) {
            var at = Instant.parse("2026-11-10T04:00:00Z").plusSeconds(3_600L * i).toString();
            var id = fleet.get(random.nextInt(CONTAINERS));
            var site = sites.get(random.nextInt(sites.size()));
            // without holds, without fills that place any
            int kind = random.nextInt(holds ? 8 : 5);
            boolean lawful = !id.equals(fleet.get(0)) && !id.equals(fleet.get(1));
            lines.add(switch (kind) {
                case 0, 1 -> line("MOVEMENT", id, at, "toSite", site);
                case 2 -> line("RETURN", id, at, "toSite", site, "empty", random.nextBoolean());
                case 3, 4, 5 -> holds || lawful
                        ? fill(id, at, "netAfterLb", null, "grossLb", holds && random.nextInt(4) == 0 ? 39 : 36)
                        : line("MOVEMENT", id, at, "toSite", site);
                case 6 -> line("HOLD", id, at, "reason", "DENTED");
                default -> fill(id, at, "lookedAt", random.nextBoolean());
            });
        }
        return lines;
    }

    private List<String> came(String sql, List<UUID> fleet) {
        return fleet.stream().map(id -> jdbc.sql(sql).param(id).query(String.class).single()).toList();
    }

    private void send(List<?> lines) {
        var answer = scans.send(Role.CLERK, batch(lines)).expect(201);
        assertThat(Scans.outcomes(answer)).as(answer.body()).allMatch(outcome -> outcome.startsWith("RECORDED"));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void inOneBatch(long seed) {
        var sites = sites();
        var sorted = fleet(sites.getFirst());
        var shuffled = fleet(sites.getFirst());
        send(lines(seed, sorted, sites, true));
        var lines = lines(seed, shuffled, sites, true);
        Collections.shuffle(lines, new Random(seed));
        send(lines);
        assertThat(came(LAWFUL, shuffled)).isEqualTo(came(LAWFUL, sorted));
        assertThat(came(HELD, shuffled)).isEqualTo(came(HELD, sorted));
    }

    @ParameterizedTest
    @ValueSource(longs = {11, 12, 13, 14})
    void overSeveralBatches(long seed) {
        var sites = sites();
        var sorted = fleet(sites.getFirst());
        var shuffled = fleet(sites.getFirst());
        send(lines(seed, sorted, sites, false));
        var lines = lines(seed, shuffled, sites, false);
        Collections.shuffle(lines, new Random(seed));
        for (int from = 0; from < LINES; from += 7) {
            send(lines.subList(from, Math.min(from + 7, LINES)));
        }
        assertThat(came(LAWFUL, shuffled)).isEqualTo(came(LAWFUL, sorted));
    }
}
