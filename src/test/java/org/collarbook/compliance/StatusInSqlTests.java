package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.RuleBook;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.context.annotation.Import;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * The status that lists derive in SQL is the status that the rules give, for random containers on every day from today
 * until a second change: only outcomes, months and the first change by date alone are stored.
 */
@RegisterTest
@Import(RandomFleet.class)
class StatusInSqlTests {

    private static final long SEED = 20261125;
    private static final int CONTAINERS = 200;
    private static final int DAYS = 365 * 6;

    private final RandomFleet fleet;
    private final KnownContainers containers;
    private final RuleBook rules;
    private final JdbcClient jdbc;
    private final Map<String, Integer> words = new TreeMap<>();
    private final Map<String, Integer> changes = new TreeMap<>();

    StatusInSqlTests(RandomFleet fleet, KnownContainers containers, RuleBook rules, JdbcClient jdbc) {
        this.fleet = fleet;
        this.containers = containers;
        this.rules = rules;
        this.jdbc = jdbc;
    }

    private record Row(UUID container, String requirement, String jurisdiction, boolean decisive,
            @Nullable LocalDate changesOn, @Nullable String changesTo) {}

    @Test
    void agreesWithTheRulesOnEveryDayUntilASecondChange() {
        System.out.println("seed " + SEED);
        var ids = fleet.of(CONTAINERS, SEED);
        var known = new HashMap<UUID, KnownContainer>();
        containers.byIds(ids).forEach(container -> known.put(container.id(), container));
        var rows = rows(ids);
        assertThat(rows.stream().filter(Row::decisive).map(Row::container)).containsExactlyInAnyOrderElementsOf(ids);
        rows.stream().filter(row -> row.changesTo() != null)
                .forEach(row -> changes.merge(row.changesTo(), 1, Integer::sum));
        assertThat(changedForNothing(ids)).isZero();
        rows.forEach(row -> follow(row, known.get(row.container())));
        System.out.println("days by word " + words + ", changes " + changes);
        assertThat(words.keySet()).as("the containers are of many kinds").contains("OVERDUE", "USE_UP", "IN_DATE",
                "DUE_THIS_MONTH", "UNDETERMINED", "NOT_REQUIRED", "OTHER_AUTHORITY", "CONDEMNED", "REJECTED",
                "ON_HOLD");
        assertThat(changes.keySet()).as("a life ends, a permit expires, a rejection, a hold or a test arrives")
                .contains("CONDEMNED", "OTHER_AUTHORITY", "REJECTED", "IN_DATE", "ON_HOLD");
    }

    private List<Row> rows(List<UUID> ids) {
        return jdbc.sql("""
                select container_id as container, requirement, jurisdiction, decisive, changes_on, changes_to
                from requirement where container_id = any (?) order by container_id, requirement, jurisdiction""")
                .param(ids.toArray(UUID[]::new)).query(Row.class).list();
    }

    /** Rows whose word on the day of the change would have been the same without it. */
    private long changedForNothing(List<UUID> ids) {
        return jdbc.sql("""
                select count(*) from requirement
                where container_id = any (?) and changes_on is not null
                  and container_status(standing, due, filled_in_time, null, null, changes_on) = changes_to""")
                .param(ids.toArray(UUID[]::new)).query(Long.class).single();
    }

    private void follow(Row row, KnownContainer known) {
        var inSql = wordsFrom(row);
        for (int i = 0; i < DAYS; i++) {
            var day = TestClock.TODAY.plusDays(i);
            var told = told(row, rules.assess(known.facts(), day));
            if (row.changesOn() != null && day.isAfter(row.changesOn()) && !told.equals(row.changesTo())) {
                return;
            }
            if (!told.equals(inSql.floorEntry(day).getValue())) {
                fail("seed %d, %s of %s on %s: %s, by the rules %s", SEED, row, known.facts(), day, inSql, told);
            }
            if (row.decisive()) {
                words.merge(told, 1, Integer::sum);
            }
        }
    }

    /** The first day of each word, over all the days. */
    private TreeMap<LocalDate, String> wordsFrom(Row row) {
        var words = new TreeMap<LocalDate, String>();
        jdbc.sql("""
                select day, word from (
                    select day, word, lag(word) over (order by day) as before from requirement,
                        lateral (select ?::date + n as day from generate_series(0, ?) n) days,
                        lateral (select container_status(standing, due, filled_in_time, changes_on, changes_to, day)
                            as word) words
                    where container_id = ? and requirement = ? and jurisdiction = ?) x
                where word is distinct from before""")
                .params(TestClock.TODAY, DAYS, row.container(), row.requirement(), row.jurisdiction()).query(one -> {
                    words.put(one.getObject(1, LocalDate.class), one.getString(2));
                });
        return words;
    }

    private static String told(Row row, Assessment told) {
        return row.decisive()
                ? told.status().name()
                : told.requirements().stream().filter(clock -> isOf(row, clock)).findFirst()
                        .map(clock -> clock.status().name()).orElse("NOT_REQUIRED");
    }

    private static boolean isOf(Row row, Clock clock) {
        var where = clock.jurisdiction() == null ? "" : clock.jurisdiction().country().code();
        return clock.requirement().name().equals(row.requirement()) && where.equals(row.jurisdiction().split("-")[0]);
    }
}
