package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.SentStatements;
import org.junit.jupiter.api.Test;

/** How many statements a list takes does not depend on how many containers are on it; nor does a fill check. */
@RegisterTest
class ListStatementTests {

    private final Api api;
    private final Given given;

    ListStatementTests(Api api, Given given) {
        this.api = api;
        this.given = given;
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
        return List.of("/api/customers/" + fleet.customer + "/containers",
                "/api/pull-list?before=2027-01-01&site=" + fleet.site, "/api/schedule?site=" + fleet.site,
                "/api/schedule?format=csv&site=" + fleet.site);
    }

    private long statements(String path) {
        var administrator = api.as(Role.ADMINISTRATOR);
        administrator.get(path).expect(200);
        try (var sent = new SentStatements()) {
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

    /** One for the key and one for the container with all its facts. */
    @Test
    void aFillCheckTakesTwo() {
        var body = Given.cylinder();
        given.registered(body);
        assertThat(statements("/api/fill-check?serial=" + body.get("serial"))).isEqualTo(2);
    }
}
