package org.collarbook.compliance;

import java.sql.SQLException;
import java.util.List;
import java.util.UUID;

import org.collarbook.testing.Planned;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A container's facts are reached by index, in the table and in what was filed under it; no table is read whole. */
@RegisterTest
class FactsByIndexTests {

    private final Planned planned;

    FactsByIndexTests(Flyway flyway) {
        planned = new Planned(flyway);
    }

    static List<String> statements() {
        return List.of(KnownContainers.SELECT, KnownContainers.PLAIN);
    }

    private void reached(String statement, String condition, Object parameter) throws SQLException {
        Planned.assertReachedByIndex(planned.plan("container, site, declaration",
                statement + condition, parameter));
    }

    @ParameterizedTest
    @MethodSource("statements")
    void ofOneContainer(String statement) throws SQLException {
        reached(statement, "where c.id = ? and " + KnownContainers.OPEN, UUID.randomUUID());
    }

    @ParameterizedTest
    @MethodSource("statements")
    void ofMany(String statement) throws SQLException {
        reached(statement, "where c.id = any (?) and " + KnownContainers.OPEN + " order by c.id",
                new UUID[]{UUID.randomUUID(), UUID.randomUUID()});
    }
}
