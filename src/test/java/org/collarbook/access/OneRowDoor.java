package org.collarbook.access;

import java.util.Map;

import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.core.annotation.Order;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.http.SessionCreationPolicy;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.security.web.access.intercept.AuthorizationFilter;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** What benchmarks compare with: an endpoint behind the same key check that reads one row and nothing else. */
@TestConfiguration(proxyBeanMethods = false)
public class OneRowDoor {

    @Bean
    @Order(0)
    SecurityFilterChain benchDoor(HttpSecurity http, Keys keys, Tokens tokens, Guesses guesses,
            ProblemAnswers problems) {
        return http.securityMatcher("/bench/**")
                .sessionManagement(session -> session.sessionCreationPolicy(SessionCreationPolicy.STATELESS))
                .addFilterBefore(new KeyFilter(keys, tokens, guesses, problems), AuthorizationFilter.class)
                .authorizeHttpRequests(requests -> requests.anyRequest().authenticated()).build();
    }

    @RestController
    static class OneRow {

        private final JdbcClient jdbc;

        OneRow(JdbcClient jdbc) {
            this.jdbc = jdbc;
        }

        @GetMapping(path = "/bench/one-row", produces = "application/json")
        Map<String, Object> row(@RequestParam String tag) {
            return jdbc.sql("select id, kind, specification, serial, size, version from container where tag = ?")
                    .param(tag).query().singleRow();
        }
    }
}
