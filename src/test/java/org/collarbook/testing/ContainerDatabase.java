package org.collarbook.testing;

import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Map;
import java.util.Objects;

import org.testcontainers.postgresql.PostgreSQLContainer;
import org.testcontainers.utility.DockerImageName;

/** A PostgreSQL in a container, with the three logins that an administrator would have made. */
final class ContainerDatabase {

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
                container.getPassword())) {
            Logins.make(connection);
        } catch (SQLException e) {
            throw new IllegalStateException("the database in the container cannot be prepared", e);
        }
    }

    Map<String, String> properties() {
        return Logins.at(container.getJdbcUrl());
    }

    void stop() {
        container.stop();
    }
}
