package org.collarbook.compliance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** A rule change walks through the whole register; a killed walk goes on where it stopped. */
@RegisterTest
class RecomputeTests {

    private static final LocalDate WRONG = LocalDate.of(1999, 1, 1);

    private final Given given;
    private final Recompute recompute;
    private final JdbcClient jdbc;

    RecomputeTests(Given given, Recompute recompute, JdbcClient jdbc) {
        this.given = given;
        this.recompute = recompute;
        this.jdbc = jdbc;
    }

    private List<UUID> fleetOfAnOldRuleBook() {
        var ids = new ArrayList<UUID>();
        var site = given.site(null);
        for (int i = 0; i < 5; i++) {
            ids.add(given.registered());
            given.moved(ids.getLast(), site, "2026-11-20T09:00:00Z");
        }
        outdate(ids);
        return ids;
    }

    private void outdate(List<UUID> ids) {
        jdbc.sql("update requirement set due = ?, rule_book_id = 0 where container_id = any (?)")
                .params(WRONG, ids.toArray(UUID[]::new)).update();
    }

    /** As if this rule book had been loaded just now, and the walk had come as far as the container when it was killed. */
    private void aWalkStands(UUID after) {
        recompute.run();
        assertThat(jdbc.sql("update recompute set finished_at = null, after_container = ?").param(after).update())
                .isEqualTo(1);
    }

    private LocalDate due(UUID id) {
        return jdbc.sql("select due from requirement where container_id = ?").param(id).query(LocalDate.class).single();
    }

    @Test
    void assessesEverythingAnewUnderTheNewRules() {
        aWalkStands(new UUID(0, 0));
        var ids = fleetOfAnOldRuleBook();
        recompute.run();
        assertThat(ids).allSatisfy(id -> assertThat(due(id)).isEqualTo(LocalDate.of(2016, 5, 1)));
        assertThat(jdbc.sql("select count(*) from requirement where rule_book_id = 0").query(Long.class).single())
                .isZero();
    }

    @Test
    void goesOnWhereAKilledWalkStoppedAndThenRests() {
        var ids = fleetOfAnOldRuleBook();
        aWalkStands(ids.get(2));
        outdate(ids);
        recompute.run();
        assertThat(ids.subList(0, 3)).as("done before the kill, not done twice")
                .allSatisfy(id -> assertThat(due(id)).isEqualTo(WRONG));
        assertThat(ids.subList(3, 5)).allSatisfy(id -> assertThat(due(id)).isEqualTo(LocalDate.of(2016, 5, 1)));
        recompute.run();
        assertThat(due(ids.getFirst())).as("a finished walk is not walked again").isEqualTo(WRONG);
    }
}
