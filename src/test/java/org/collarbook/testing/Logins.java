package org.collarbook.testing;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;

/** The three logins that an administrator makes on a server of his own, before the first start of the service. */
final class Logins {

    private static final String PASSWORD = "for-tests-only";

    private Logins() {}

    static void make(Connection administrator) throws SQLException {
        try (var statement = administrator.createStatement()) {
            statement.execute("create role collarbook_owner login createrole password '" + PASSWORD + "'");
            statement.execute("create role collarbook_app login password '" + PASSWORD + "'");
            statement.execute("create role collarbook_portal login password '" + PASSWORD + "'");
            statement.execute("grant collarbook_portal to collarbook_owner with admin option");
            statement.execute("alter database " + administrator.getCatalog() + " owner to collarbook_owner");
            statement.execute("alter schema public owner to collarbook_owner");
        }
    }

    /** What tells a service to use them. */
    static Map<String, String> at(String url) {
        return Map.of("spring.datasource.url", url, "spring.datasource.username", "collarbook_app",
                "spring.datasource.password", PASSWORD, "spring.flyway.url", url, "spring.flyway.user",
                "collarbook_owner", "spring.flyway.password", PASSWORD);
    }
}
