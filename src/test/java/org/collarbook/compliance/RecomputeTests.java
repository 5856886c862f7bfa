package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** What was judged by other rules is judged anew, whenever it was judged, and nothing else. */
@RegisterTest
class RecomputeTests {

    private static final LocalDate WRONG = LocalDate.of(1999, 1, 1);
    private static final LocalDate DUE = LocalDate.of(2016, 5, 1);

    private final Given given;
    private final Recompute recompute;
    private final LoadedRuleBook loaded;
    private final JdbcClient jdbc;
    private final TestClock clock;

    RecomputeTests(Given given, Recompute recompute, LoadedRuleBook loaded, JdbcClient jdbc, TestClock clock) {
        this.given = given;
        this.recompute = recompute;
        this.loaded = loaded;
        this.jdbc = jdbc;
        this.clock = clock;
    }

    private List<UUID> fleetOfAnOldRuleBook() {
        var ids = new ArrayList<UUID>();
        var site = given.site(null);
        for (int i = 0; i < 5; i++) {
            ids.add(given.registered());
            given.moved(ids.getLast(), site, "2026-11-20T09:00:00Z");
        }
        outdate(ids);
        jdbc.sql("update requirement set rule_book_id = 0 where container_id = any (?)")
                .param(ids.toArray(UUID[]::new)).update();
        return ids;
    }

    private void outdate(List<UUID> ids) {
        jdbc.sql("update requirement set due = ? where container_id = any (?)")
                .params(WRONG, ids.toArray(UUID[]::new)).update();
    }

    private LocalDate due(UUID id) {
        return jdbc.sql("select due from requirement where container_id = ?").param(id).query(LocalDate.class).single();
    }

    private List<LocalDate> dues(List<UUID> ids) {
        return ids.stream().map(this::due).toList();
    }

    private String pass() {
        return jdbc.sql("""
                select finished_at is not null || ' ' || done from recompute
                where rule_book_id = ? and as_of <= ? order by as_of desc limit 1""")
                .params(loaded.id(), LocalDate.now(clock)).query(String.class).single();
    }

    @Test
    void assessesEverythingAnewUnderTheNewRules() {
        var ids = fleetOfAnOldRuleBook();
        recompute.run();
        assertThat(dues(ids)).containsOnly(DUE);
        assertThat(jdbc.sql("select count(*) from requirement where rule_book_id = 0").query(Long.class).single())
                .isZero();
    }

    @Test
    void whatIsDoneIsNotDoneTwice() {
        recompute.run();
        var ids = fleetOfAnOldRuleBook();
        // as a run that was killed leaves it: some are judged, and it does not stand as finished
        jdbc.sql("update requirement set rule_book_id = ? where container_id = any (?)")
                .params(loaded.id(), ids.subList(0, 3).toArray(UUID[]::new)).update();
        jdbc.sql("update recompute set finished_at = null, done = 3").update();
        recompute.run();
        assertThat(dues(ids.subList(0, 3))).containsOnly(WRONG);
        assertThat(dues(ids.subList(3, 5))).containsOnly(DUE);
        assertThat(pass()).isEqualTo("true 5");
        recompute.run();
        assertThat(dues(ids.subList(0, 3))).containsOnly(WRONG);
        assertThat(pass()).isEqualTo("true 5");
    }

    /** While services are replaced one by one, the older ones go on to judge what is recorded with them. */
    @Test
    void whatAServiceOnTheOlderBookJudgesAfterwardsIsFoundByTheNextRun() {
        var ids = fleetOfAnOldRuleBook();
        recompute.run();
        assertThat(pass()).startsWith("true ");
        outdate(ids.subList(0, 1));
        jdbc.sql("update requirement set rule_book_id = 0 where container_id = ?").param(ids.getFirst()).update();
        outdate(ids.subList(1, 2));
        jdbc.sql("update requirement set assessed_on = '1901-01-01' where container_id = ?").param(ids.get(1)).update();
        recompute.run();
        assertThat(dues(ids)).containsOnly(DUE);
        assertThat(pass()).startsWith("true ");
    }

    /** DOT 3HT serves twenty-four years, 49 CFR 180.209(k): made in January 2003, it is over on 2027-02-01. */
    private UUID aLifeThatEnds(UUID site) {
        var body = Given.cylinder();
        body.put("specification", "DOT-3HT1850");
        body.put("manufactured", "2003-01");
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    private UUID aPermitThatExpires(UUID site, LocalDate expires) {
        var body = Given.cylinder();
        body.put("specification", "DOT-SP12345");
        body.put("manufactured", "2024-01");
        body.put("permit", Map.of("number", "SP12345", "expires", expires.toString(), "intervalYears", 5));
        var id = given.registered(body);
        given.moved(id, site, "2026-11-20T09:00:00Z");
        return id;
    }

    private String stored(UUID id) {
        return jdbc.sql("""
                select concat_ws(' ', standing, changes_on, changes_to, assessed_on) from requirement
                where container_id = ? and decisive""").param(id).query(String.class).single();
    }

    private String word(UUID id, LocalDate day) {
        return jdbc.sql("""
                select container_status(standing, due, filled_in_time, changes_on, changes_to, ?) from requirement
                where container_id = ? and decisive""").params(day, id).query(String.class).single();
    }

    @Test
    void whatChangesByDateAloneAnswersSoOnItsDayAndIsAssessedAnewThen() {
        var site = given.site(null);
        var life = aLifeThatEnds(site);
        var permit = aPermitThatExpires(site, LocalDate.of(2027, 1, 31));
        assertThat(stored(life)).isEqualTo("DUE 2027-02-01 CONDEMNED 2026-11-25");
        assertThat(stored(permit)).isEqualTo("DUE 2027-02-01 OTHER_AUTHORITY 2026-11-25");
        assertThat(word(permit, LocalDate.of(2027, 1, 31))).isEqualTo("IN_DATE");
        assertThat(word(permit, LocalDate.of(2027, 2, 1))).isEqualTo("OTHER_AUTHORITY");
        assertThat(word(life, LocalDate.of(2027, 2, 1))).isEqualTo("CONDEMNED");

        clock.set(LocalDate.of(2027, 1, 31));
        recompute.run();
        assertThat(stored(life)).startsWith("DUE 2027-02-01 CONDEMNED");
        clock.set(LocalDate.of(2027, 2, 1));
        recompute.run();
        assertThat(stored(life)).isEqualTo("CONDEMNED 2027-02-01");
        assertThat(stored(permit)).isEqualTo("OTHER_AUTHORITY 2027-02-01");
    }

    /** The day is that of the site: 03:00 in UTC is the evening before in Chicago. */
    @Test
    void notBeforeTheDayHasBegunAtTheSite() {
        var life = aLifeThatEnds(given.site(null));
        clock.set(Instant.parse("2027-02-01T03:00:00Z"));
        recompute.run();
        assertThat(stored(life)).startsWith("DUE 2027-02-01 CONDEMNED");
        clock.set(Instant.parse("2027-02-01T06:00:00Z"));
        recompute.run();
        assertThat(stored(life)).isEqualTo("CONDEMNED 2027-02-01");
    }
}
