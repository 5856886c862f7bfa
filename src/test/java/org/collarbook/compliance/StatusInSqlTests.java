package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.custody.Fill;
import org.collarbook.custody.Fills;
import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.inspection.Requalifications;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Rin;
import org.collarbook.regulation.RuleBook;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * The status that lists derive in SQL is the status that the rules give, for random containers and days: only outcomes
 * and months are stored, so both must agree on every day from today on.
 */
@RegisterTest
class StatusInSqlTests {

    private static final long SEED = 20261125;
    private static final int CONTAINERS = 150;
    private static final int DAYS = 40;
    private static final Caller CALLER = new Caller(UUID.randomUUID(), "seeded", java.util.Set.of(Role.YARD),
            CustomerScope.EVERYONE);

    private final Given given;
    private final Requalifications requalifications;
    private final Fills fills;
    private final KnownContainers containers;
    private final RuleBook rules;
    private final JdbcClient jdbc;
    private final Random random = new Random(SEED);

    StatusInSqlTests(Given given, Requalifications requalifications, Fills fills, KnownContainers containers,
            RuleBook rules, JdbcClient jdbc) {
        this.given = given;
        this.requalifications = requalifications;
        this.fills = fills;
        this.containers = containers;
        this.rules = rules;
        this.jdbc = jdbc;
    }

    @Test
    void agreesWithTheRulesOnEveryDay() {
        var site = given.site(given.customer());
        var ids = new ArrayList<UUID>();
        for (int i = 0; i < CONTAINERS; i++) {
            ids.add(container(site));
        }
        var words = new HashMap<String, Integer>();
        for (int i = 0; i < DAYS; i++) {
            var day = TestClock.TODAY.plusDays(i == 0 ? 0 : random.nextInt(365 * 15));
            var inSql = statusInSql(ids, day);
            for (var known : containers.byIds(ids)) {
                var status = rules.assess(known.facts(), day).status().name();
                assertThat(inSql.get(known.id())).as("seed %d, %s on %s", SEED, known.facts(), day).isEqualTo(status);
                words.merge(status, 1, Integer::sum);
            }
        }
        assertThat(words.keySet()).as("the containers are of many kinds").contains("OVERDUE", "USE_UP", "IN_DATE",
                "DUE_THIS_MONTH", "UNDETERMINED", "NOT_REQUIRED", "OTHER_AUTHORITY", "CONDEMNED");
    }

    private Map<UUID, String> statusInSql(List<UUID> ids, LocalDate day) {
        var status = new HashMap<UUID, String>();
        jdbc.sql("""
                select container_id, container_status(standing, due, filled_in_time, changes_on, changes_to, ?) from requirement
                where decisive and container_id = any (?)""").params(day, ids.toArray(UUID[]::new)).query(row -> {
            status.put(row.getObject(1, UUID.class), row.getString(2));
        });
        return status;
    }

    private UUID container(UUID site) {
        var body = Given.cylinder();
        var made = YearMonth.of(1995, 1).plusMonths(random.nextInt(12 * 31));
        body.put("manufactured", made.toString());
        body.put("specification", pick("DOT-4BA240", "DOT-4BW240", "DOT-4E240", "DOT-4B240ET", "DOT-3B300",
                "TC-4BAM17", "DOT-4BA240", "DOT-39"));
        if (random.nextInt(6) == 0) {
            body.remove(pick("coated", "service", "manufactured"));
        }
        if (random.nextInt(12) == 0) {
            body.put("kind", "STATIONARY_TANK");
            body.put("specification", "ASME");
        }
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        for (int tests = random.nextInt(3); tests > 0; tests--) {
            test(id, made);
        }
        if (random.nextInt(3) > 0) {
            fills.record(new Fill(id, TestClock.TODAY.minusDays(random.nextInt(2000)), null), CALLER);
        }
        return id;
    }

    private void test(UUID id, YearMonth made) {
        var month = made.plusMonths(1 + random.nextInt(200));
        var method = random.nextInt(8) == 0
                ? null
                : List.of(Method.VOLUMETRIC_EXPANSION, Method.PROOF_PRESSURE, Method.EXTERNAL_VISUAL)
                        .get(random.nextInt(3));
        var result = random.nextInt(15) == 0 ? Requalification.Result.CONDEMNED : Requalification.Result.PASSED;
        if (month.isBefore(YearMonth.from(TestClock.TODAY))) {
            try {
                requalifications.append(new RequalificationEntry(id,
                        new Requalification(month, method, false, false, Rin.parse("A123"), false, result), null, null),
                        CALLER);
            } catch (org.collarbook.platform.ProblemException twice) {
                assertThat(twice.problem().code()).isEqualTo("ALREADY_RECORDED");
            }
        }
    }

    private String pick(String... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
