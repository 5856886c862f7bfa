package org.collarbook.platform.database;

import java.nio.file.Path;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.type.AnnotatedTypeMetadata;

/** With no {@code spring.datasource.url} the service brings its own PostgreSQL server. */
@Configuration(proxyBeanMethods = false)
@Conditional(EmbeddedDatabaseConfiguration.NoDatabaseGiven.class)
class EmbeddedDatabaseConfiguration {

    @Bean(destroyMethod = "close")
    EmbeddedServer embeddedServer(@Value("${collarbook.database.folder:data}") Path folder) {
        return EmbeddedServer.start(folder);
    }

    @Bean
    JdbcConnectionDetails applicationConnection(EmbeddedServer server) {
        return new Login(server.jdbcUrl(), "collarbook_app", server.credentials().application());
    }

    @Bean
    FlywayConnectionDetails ownerConnection(EmbeddedServer server) {
        return new Owner(new Login(server.jdbcUrl(), "collarbook_owner", server.credentials().owner()));
    }

    private record Login(String url, String user, String password) implements JdbcConnectionDetails {

        @Override
        public String getJdbcUrl() {
            return url;
        }

        @Override
        public String getUsername() {
            return user;
        }

        @Override
        public String getPassword() {
            return password;
        }

        @Override
        public String toString() {
            return user + " at " + url;
        }
    }

    private record Owner(Login login) implements FlywayConnectionDetails {

        @Override
        public String getJdbcUrl() {
            return login.url();
        }

        @Override
        public String getUsername() {
            return login.user();
        }

        @Override
        public String getPassword() {
            return login.password();
        }
    }

    static final class NoDatabaseGiven implements Condition {

        @Override
        public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
            return !context.getEnvironment().containsProperty("spring.datasource.url");
        }
    }
}
