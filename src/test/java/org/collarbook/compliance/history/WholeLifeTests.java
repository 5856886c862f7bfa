package org.collarbook.compliance.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Every kind of fact is in the chain, and each one altered by the owner of the tables is found and named. */
@RegisterTest
class WholeLifeTests {

    private final Api api;
    private final Life life;
    private final Given given;
    private final JdbcClient owner;

    WholeLifeTests(Api api, Given given, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.life = new Life(api, given);
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
    }

    private UUID withAWholeLife() {
        var body = Given.cylinder();
        var maker = "L" + Given.serial();
        body.put("maker", maker);
        var id = life.begins(body, "6-20");
        life.filled(id, "2026-11-02T11:00:00Z");
        life.emptied(id, "2026-11-04T11:00:00Z");
        life.lifted(life.held(id, "VALVE_DEFECT", "2026-11-05T11:00:00Z"));
        var rin = life.facility();
        var first = life.requalified(id, Life.visual(rin, "2026-11-10", "DEFECT"));
        life.repaired(id, rin, "foot ring welded on anew");
        life.repairVoid(life.repaired(id, rin, "collar welded on anew"));
        life.corrected(first, Life.visual(rin, "2026-11-11", "DEFECT"));
        life.recalled(maker, "2026-11-20T08:00:00Z");
        var stands = UUID.fromString(api.as(Role.CLERK).get("/api/containers/" + id + "/movements")
                .text("/items/0/toSite"));
        life.seen(id, stands, "2026-11-21T08:00:00Z");
        life.swapped(id, stands, given.site(null), "2026-11-22");
        return id;
    }

    private List<String> broken(UUID container) {
        var broken = new ArrayList<String>();
        api.as(Role.CLERK).get("/api/audit/verification?container=" + container).expect(200).at("/broken")
                .forEach(one -> broken.add(one.path("kind").asString() + ": " + one.path("what").asString()));
        return broken;
    }

    @Test
    void everyKindOfFactIsInTheHistory() {
        var id = withAWholeLife();
        var history = api.as(Role.CLERK).get("/api/containers/" + id + "/history").expect(200);
        var kinds = new ArrayList<String>();
        history.at("/items").forEach(entry -> kinds.add(entry.path("kind").asString()));
        assertThat(kinds).containsExactlyInAnyOrder("REGISTERED", "MOVED", "FILLED", "EMPTIED", "HELD", "HOLD_LIFTED",
                "REQUALIFIED", "REQUALIFIED", "REQUALIFICATION_CORRECTED", "REPAIRED", "REPAIRED", "REPAIR_CORRECTED",
                "HELD", "SEEN", "MOVED", "SWAPPED_OUT", "MOVED", "SWAPPED_IN");
        assertThat(history.body()).contains("\"netLb\":\"19.5\"", "\"filledAt\":\"2026-11-02T11:00:00Z\"",
                "\"occurredAt\":\"2026-11-02T11:00:00Z\"", "\"recallId\":", "\"how\":\"came back\"",
                "\"person\":\"R. Amsel\"", "\"operator\":\"M. Holt\"", "\"reason\":\"read from another cylinder\"",
                "\"work\":\"foot ring welded on anew\"", "\"registered_at\":\"2026-11-25T12:00:00Z\"");
        assertThat(broken(id)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {
            "update hold set note = 'nothing' where recall_id is null and container_id = ? | HELD: the fact was altered",
            "update hold set recall_id = null where recall_id is not null and container_id = ? | HELD: the fact was altered",
            "update hold set occurred_at = occurred_at + interval '1 day' where container_id = ? | HELD: the fact was altered",
            "update hold_lift set person = 'Nobody' from hold h where h.id = hold_id and h.container_id = ? | HOLD_LIFTED: the fact was altered",
            "delete from hold_lift using hold h where h.id = hold_id and h.container_id = ? | HOLD_LIFTED: the fact is gone",
            "update emptying set emptied_on = emptied_on + 1 where container_id = ? | EMPTIED: the fact was altered",
            "delete from emptying where container_id = ? | EMPTIED: the fact is gone",
            "update requalification set performed_on = performed_on + 5 where container_id = ? | REQUALIFIED: the fact was altered",
            "update test_record set operator = 'Nobody' from requalification q where q.id = requalification_id and container_id = ? | REQUALIFIED: the fact was altered",
            "update test_record set visual = '[]' from requalification q where q.id = requalification_id and container_id = ? | REQUALIFIED: the fact was altered",
            "delete from test_record using requalification q where q.id = requalification_id and container_id = ? | REQUALIFIED: the fact was altered",
            "update requalification_correction set reason = 'so' from requalification q where q.id = corrects and container_id = ? | REQUALIFICATION_CORRECTED: the fact was altered",
            "delete from requalification_correction using requalification q where q.id = corrects and container_id = ? | REQUALIFICATION_CORRECTED: the fact is gone",
            "update repair set keep_until = keep_until + 1 where container_id = ? | REPAIRED: the fact was altered",
            "update repair_correction set reason = 'so' from repair r where r.id = corrects and container_id = ? | REPAIR_CORRECTED: the fact was altered",
            "delete from repair r where container_id = ? and not exists (select from repair_correction where corrects = r.id) | REPAIRED: the fact is gone",
            "update sighting set occurred_at = occurred_at + interval '1 day' where container_id = ? | SEEN: the fact was altered",
            "delete from sighting where container_id = ? | SEEN: the fact is gone",
            "update swap w set refused_for = '{}' from movement m where m.id = w.in_movement_id and m.container_id = ? | SWAPPED_IN: the fact was altered",
            "delete from swap w using movement m where m.id = w.out_movement_id and m.container_id = ? | SWAPPED_OUT: the fact is gone",
            "update fill set filled_at = filled_at + interval '1 minute' where container_id = ? | FILLED: the fact was altered",
            "update fill set net_lb = net_lb - 0.001 where container_id = ? | FILLED: the fact was altered",
            "update fill set leak_checked = false where container_id = ? | FILLED: the fact was altered",
            "update fill set site_id = null where container_id = ? | FILLED: the fact was altered",
            "update fill set refused_for = '{OVERDUE}', observed_overfill = true where container_id = ? | FILLED: the fact was altered"})
    void anAlterationIsFoundAndNamed(String sql, String found) {
        var id = withAWholeLife();
        assertThat(broken(id)).isEmpty();
        assertThat(owner.sql(sql).param(id).update()).isPositive();
        assertThat(broken(id)).as(sql).anySatisfy(one -> assertThat(one).startsWith(found));
    }

    /** What a recall holds long after the containers were registered, and what registers while it runs. */
    @Test
    void theHoldsOfARecallAreEnteredWhereverTheyArePlaced() {
        var body = Given.cylinder();
        var maker = "L" + Given.serial();
        body.put("maker", maker);
        var before = life.begins(body, "6-20");
        life.recalled(maker, "2026-11-20T08:00:00Z");
        var again = Given.cylinder();
        again.put("maker", maker);
        var after = life.begins(again, "6-20");
        for (var id : List.of(before, after)) {
            assertThat(broken(id)).isEmpty();
            assertThat(owner.sql("select count(*) from journal where kind = 'HELD' and container_id = ?").param(id)
                    .query(Integer.class).single()).isEqualTo(1);
        }
    }
}
