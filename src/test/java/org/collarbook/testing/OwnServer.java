package org.collarbook.testing;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Map;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;

/** A database server that belongs to no service, so that any of them can be killed: {@code -Ddatabase} says which. */
public final class OwnServer implements AutoCloseable {

    private final Map<String, String> properties;
    private final Closeable server;

    private OwnServer(Map<String, String> properties, Closeable server) {
        this.properties = properties;
        this.server = server;
    }

    public static OwnServer start(Path folder) throws IOException, SQLException {
        if (System.getProperty("database", "embedded").equals("container")) {
            var container = ContainerDatabase.start();
            return new OwnServer(container.properties(), container::stop);
        }
        var server = EmbeddedPostgres.builder().setDataDirectory(folder.resolve("cluster"))
                .setOverrideWorkingDirectory(folder.resolve("binaries").toFile()).start();
        try (var administrator = server.getPostgresDatabase().getConnection()) {
            Logins.make(administrator);
        }
        return new OwnServer(Logins.at("jdbc:postgresql://localhost:" + server.getPort() + "/postgres"), server);
    }

    /** As arguments of a service. */
    public String[] arguments() {
        return properties.entrySet().stream().map(property -> "--" + property.getKey() + "=" + property.getValue())
                .toArray(String[]::new);
    }

    /** Of whoever owns the tables. */
    public Connection owner() throws SQLException {
        return DriverManager.getConnection(properties.get("spring.flyway.url"), properties.get("spring.flyway.user"),
                properties.get("spring.flyway.password"));
    }

    @Override
    public void close() throws IOException {
        server.close();
    }
}
