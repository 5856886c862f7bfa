package org.collarbook.testing;

import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Map;
import java.util.Objects;

import org.testcontainers.postgresql.PostgreSQLContainer;
import org.testcontainers.utility.DockerImageName;

/** A PostgreSQL in a container, with the three logins that an administrator would have made. */
final class ContainerDatabase {

    private static final String PASSWORD = "for-tests-only";

    private final PostgreSQLContainer container;

    private ContainerDatabase(PostgreSQLContainer container) {
        this.container = container;
    }

    static ContainerDatabase start() {
        var image = Objects.requireNonNullElse(System.getenv("POSTGRES_IMAGE"), "postgres:18");
        var container = new PostgreSQLContainer(DockerImageName.parse(image).asCompatibleSubstituteFor("postgres"));
        // the container's own default switches durability off
        container.withCommand("postgres", "-c", "fsync=on");
        container.start();
        var database = new ContainerDatabase(container);
        database.prepare();
        return database;
    }

    private void prepare() {
        try (var connection = DriverManager.getConnection(container.getJdbcUrl(), container.getUsername(),
                container.getPassword()); var statement = connection.createStatement()) {
            statement.execute("create role collarbook_owner login createrole password '" + PASSWORD + "'");
            statement.execute("create role collarbook_app login password '" + PASSWORD + "'");
            statement.execute("create role collarbook_portal login password '" + PASSWORD + "'");
            statement.execute("grant collarbook_portal to collarbook_owner with admin option");
            statement.execute("alter database " + container.getDatabaseName() + " owner to collarbook_owner");
            statement.execute("alter schema public owner to collarbook_owner");
        } catch (SQLException e) {
            throw new IllegalStateException("the database in the container cannot be prepared", e);
        }
    }

    Map<String, String> properties() {
        return Map.of("spring.datasource.url", container.getJdbcUrl(), "spring.datasource.username", "collarbook_app",
                "spring.datasource.password", PASSWORD, "spring.flyway.url", container.getJdbcUrl(),
                "spring.flyway.user", "collarbook_owner", "spring.flyway.password", PASSWORD);
    }

    void stop() {
        container.stop();
    }
}
