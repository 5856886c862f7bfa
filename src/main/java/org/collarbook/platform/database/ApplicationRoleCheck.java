package org.collarbook.platform.database;

import java.sql.SQLException;

import javax.sql.DataSource;

import org.flywaydb.core.Flyway;
import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.stereotype.Component;

/**
 * Looks at the application's login before anything is migrated. Facts are append-only because that login may not
 * change them; a superuser, or the owner of the tables, could.
 */
@Component
class ApplicationRoleCheck implements FlywayMigrationStrategy {

    private final DataSource application;

    ApplicationRoleCheck(DataSource application) {
        this.application = application;
    }

    @Override
    public void migrate(Flyway flyway) {
        refuseTooMuchPower(flyway);
        flyway.migrate();
    }

    private void refuseTooMuchPower(Flyway flyway) {
        try (var connection = application.getConnection();
                var owner = flyway.getConfiguration().getDataSource().getConnection();
                var statement = connection.createStatement();
                var row = statement.executeQuery("""
                        select current_user, rolsuper or rolbypassrls, current_setting('server_version_num')::int
                        from pg_roles where rolname = current_user""")) {
            row.next();
            var user = row.getString(1);
            if (row.getBoolean(2)) {
                throw refusal(user, "is a superuser or bypasses row security");
            }
            if (user.equals(owner.getMetaData().getUserName())) {
                throw refusal(user, "is also the login that runs the migrations and would own the tables");
            }
            if (row.getInt(3) < 160000) {
                throw new UnsuitableDatabaseException("The database server is older than PostgreSQL 16, the oldest this"
                        + " service can use (it is tested on 18).");
            }
        } catch (SQLException e) {
            throw new UnsuitableDatabaseException("The database does not answer: " + e.getMessage());
        }
    }

    private static UnsuitableDatabaseException refusal(String user, String why) {
        return new UnsuitableDatabaseException("The application's database login " + user + " " + why
                + ", so the database could not protect recorded facts. Give spring.datasource.username a plain login"
                + " (collarbook_app) and spring.flyway.user the owner (collarbook_owner); README, Your own database,"
                + " has the statements.");
    }
}
