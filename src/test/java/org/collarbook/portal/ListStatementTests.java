package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.SentStatements;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;

/** How many statements a list takes does not depend on how many containers are on it; nor does a fill check. */
@RegisterTest
class ListStatementTests {

    private final Api api;
    private final Given given;
    private final TestClock clock;

    ListStatementTests(Api api, Given given, TestClock clock) {
        this.api = api;
        this.given = given;
        this.clock = clock;
    }

    private record Fleet(UUID customer, UUID site) {}

    private Fleet fleetOf(int containers) {
        var customer = given.customer();
        var fleet = new Fleet(customer, given.site(customer));
        for (int i = 0; i < containers; i++) {
            given.moved(given.registered(), fleet.site, "2026-11-20T09:00:00Z");
        }
        return fleet;
    }

    private static List<String> lists(Fleet fleet) {
        return List.of("/api/pull-list?before=2027-01-01&site=" + fleet.site, "/api/schedule?site=" + fleet.site,
                "/api/schedule?format=csv&site=" + fleet.site);
    }

    private long statements(String path) {
        var administrator = api.as(Role.ADMINISTRATOR);
        administrator.get(path).expect(200);
        try (var sent = SentStatements.byTheRequest()) {
            administrator.get(path).expect(200);
            return sent.count();
        }
    }

    @Test
    void aLongListTakesAsManyStatementsAsAShortOne() {
        var few = lists(fleetOf(2));
        var many = lists(fleetOf(40));
        for (int i = 0; i < few.size(); i++) {
            long statements = statements(many.get(i));
            assertThat(statements).as(many.get(i)).isEqualTo(statements(few.get(i))).isLessThanOrEqualTo(7);
        }
    }

    /** Four that begin and end the snapshot, and two that confine it, are among them. */
    @Test
    void aPortalsPageTakesAsManyForManyAsForFew() {
        var few = fleetOf(2);
        var many = fleetOf(40);
        for (var asked : List.of("", "&status=OVERDUE&dueFrom=2016-01&dueTo=2016-12")) {
            long statements = statements("/api/portal/containers?customer=" + many.customer + asked);
            assertThat(statements).as(asked)
                    .isEqualTo(statements("/api/portal/containers?customer=" + few.customer + asked))
                    .isLessThanOrEqualTo(11);
        }
        assertThat(statements("/api/portal/sites?customer=" + many.customer))
                .isEqualTo(statements("/api/portal/sites?customer=" + few.customer)).isLessThanOrEqualTo(9);
        assertThat(statementsOfChanges(many)).isEqualTo(statementsOfChanges(few)).isLessThanOrEqualTo(11);
    }

    /** From an answer of the day before, so that every container is looked at. */
    private long statementsOfChanges(Fleet fleet) {
        var list = "/api/portal/containers?customer=" + fleet.customer;
        clock.set(TestClock.TODAY.minusDays(1));
        var since = api.as(Role.ADMINISTRATOR).get(list).expect(200).header("Since-Token");
        clock.set(TestClock.TODAY);
        return statements(list + "&since=" + since);
    }

    /** One for the key and one for the container with all its facts. */
    @Test
    void aFillCheckTakesTwo() {
        var body = Given.cylinder();
        given.registered(body);
        assertThat(statements("/api/fill-check?serial=" + body.get("serial"))).isEqualTo(2);
    }
}
