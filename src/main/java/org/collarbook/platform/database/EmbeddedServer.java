package org.collarbook.platform.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;

/**
 * A real PostgreSQL server started from the binaries in the application's own jar, its data kept in one folder. It
 * listens on the loopback address only and asks everyone for a password.
 */
final class EmbeddedServer implements AutoCloseable {

    static final String DATABASE = "collarbook";

    private final DatabaseFolder folder;
    private final EmbeddedPostgres server;
    private final Credentials credentials;

    private EmbeddedServer(DatabaseFolder folder, EmbeddedPostgres server, Credentials credentials) {
        this.folder = folder;
        this.server = server;
        this.credentials = credentials;
    }

    static EmbeddedServer start(Path root) {
        var folder = DatabaseFolder.take(root);
        try {
            var credentials = Credentials.at(folder.resolve("credentials.properties"));
            var server = boot(folder, credentials);
            try {
                prepare(server, credentials);
            } catch (SQLException e) {
                server.close();
                throw e;
            }
            return new EmbeddedServer(folder, server, credentials);
        } catch (IOException | SQLException e) {
            folder.close();
            throw new DatabaseFolderException("The embedded database on " + root.toAbsolutePath()
                    + " does not start: " + e + ". The server's own words are in the log above.");
        }
    }

    private static EmbeddedPostgres boot(DatabaseFolder folder, Credentials credentials) throws IOException {
        var passwordFile = Credentials.createPrivate(folder.resolve("initdb.password"));
        Files.writeString(passwordFile, credentials.superuser());
        try {
            return EmbeddedPostgres.builder().setDataDirectory(folder.cluster()).setCleanDataDirectory(false)
                    .setOverrideWorkingDirectory(folder.binaries().toFile()).setRegisterShutdownHook(false)
                    .setPGStartupWait(Duration.ofMinutes(2))
                    // options of initdb; the later --auth overrides the library's "trust"
                    .setLocaleConfig("auth", "scram-sha-256")
                    .setLocaleConfig("pwfile", passwordFile.toAbsolutePath().toString())
                    .setLocaleConfig("locale-provider", "builtin").setLocaleConfig("builtin-locale", "C.UTF-8")
                    .setConnectConfig("password", credentials.superuser())
                    // the library is made for tests and switches durability off
                    .setServerConfig("fsync", "on").setServerConfig("synchronous_commit", "on")
                    .setServerConfig("full_page_writes", "on").setServerConfig("listen_addresses", "localhost")
                    .setServerConfig("unix_socket_directories", "").setServerConfig("timezone", "UTC")
                    .setServerConfig("max_wal_size", "2GB").setServerConfig("shared_buffers", "256MB")
                    .setServerConfig("max_connections", "100")
                    // short statements only: compiling one costs more than running it
                    .setServerConfig("jit", "off").start();
        } finally {
            Files.delete(passwordFile);
        }
    }

    private static void prepare(EmbeddedPostgres server, Credentials credentials) throws SQLException {
        try (var connection = server.getPostgresDatabase().getConnection()) {
            role(connection, "collarbook_owner", "createrole", credentials.owner());
            role(connection, "collarbook_app", "nocreaterole", credentials.application());
            role(connection, "collarbook_portal", "nocreaterole", credentials.portal());
            execute(connection, "grant collarbook_portal to collarbook_owner with admin option");
            if (!exists(connection, "select 1 from pg_database where datname = '" + DATABASE + "'")) {
                execute(connection, "create database " + DATABASE + " owner collarbook_owner");
                execute(connection, "revoke all on database " + DATABASE + " from public");
                execute(connection, "grant connect, temporary on database " + DATABASE
                        + " to collarbook_owner, collarbook_app");
                execute(connection, "grant connect on database " + DATABASE + " to collarbook_portal");
            }
        }
    }

    /** Names and passwords are our own (letters, digits, - and _), so the text needs no quoting. */
    private static void role(Connection connection, String name, String may, String password) throws SQLException {
        var verb = exists(connection, "select 1 from pg_roles where rolname = '" + name + "'") ? "alter" : "create";
        execute(connection, verb + " role " + name + " login nosuperuser nobypassrls " + may + " password '" + password
                + "'");
    }

    private static boolean exists(Connection connection, String query) throws SQLException {
        try (var statement = connection.createStatement(); var rows = statement.executeQuery(query)) {
            return rows.next();
        }
    }

    private static void execute(Connection connection, String sql) throws SQLException {
        try (var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    String jdbcUrl() {
        return "jdbc:postgresql://localhost:" + server.getPort() + "/" + DATABASE;
    }

    Credentials credentials() {
        return credentials;
    }

    @Override
    public void close() throws IOException {
        try (folder) {
            server.close();
        }
    }
}
