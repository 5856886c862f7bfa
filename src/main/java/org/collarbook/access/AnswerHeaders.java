package org.collarbook.access;

import java.time.Duration;
import java.util.List;

import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.config.annotation.web.configurers.CorsConfigurer;
import org.springframework.security.config.annotation.web.configurers.HeadersConfigurer;
import org.springframework.security.web.header.writers.ReferrerPolicyHeaderWriter;
import org.springframework.web.cors.CorsConfiguration;
import org.springframework.web.cors.UrlBasedCorsConfigurationSource;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/**
 * What every answer bears besides Spring Security's own: nosniff, no-store unless an endpoint says else, and over TLS alone
 * Strict-Transport-Security.
 */
final class AnswerHeaders {

    /** An answer for machines runs and loads nothing, wherever a browser is made to show it. */
    private static final String FOR_MACHINES = "default-src 'none'; frame-ancestors 'none'; base-uri 'none';"
            + " form-action 'none'";
    /** The pages are ours alone; Swagger UI sets styles and draws its pictures inline. */
    private static final String FOR_PEOPLE = "default-src 'self'; img-src 'self' data:; style-src 'self'"
            + " 'unsafe-inline'; object-src 'none'; frame-ancestors 'none'; base-uri 'none'; form-action 'self'";

    private AnswerHeaders() {}

    static void write(HeadersConfigurer<HttpSecurity> headers) {
        headers.referrerPolicy(
                referrer -> referrer.policy(ReferrerPolicyHeaderWriter.ReferrerPolicy.NO_REFERRER))
                .addHeaderWriter(AnswerHeaders::contentSecurity);
    }

    private static void contentSecurity(HttpServletRequest request, HttpServletResponse response) {
        var path = request.getRequestURI();
        boolean machine = path.startsWith("/api/") || path.startsWith("/api-docs") || path.startsWith("/actuator/");
        response.setHeader("Content-Security-Policy", machine ? FOR_MACHINES : FOR_PEOPLE);
    }

    /** Keys are no cookies: a page that is let in sends the key that its user gave it. */
    static void cors(CorsConfigurer<HttpSecurity> cors, List<String> origins) {
        if (origins.isEmpty()) {
            cors.disable();
            return;
        }
        var allowed = new CorsConfiguration();
        allowed.setAllowedOrigins(origins);
        allowed.setAllowedMethods(List.of("GET", "HEAD", "POST", "PUT", "DELETE"));
        allowed.setAllowedHeaders(List.of("Authorization", "Content-Type", "Accept", "If-Match", "If-None-Match",
                "If-Modified-Since", "Idempotency-Key"));
        allowed.setExposedHeaders(
                List.of("ETag", "Link", "Since-Token", "Location", "Retry-After", "RateLimit", "RateLimit-Policy",
                        "Idempotent-Replay", AccessLogFilter.REQUEST_ID));
        allowed.setMaxAge(Duration.ofHours(1));
        var source = new UrlBasedCorsConfigurationSource();
        source.registerCorsConfiguration("/api/**", allowed);
        cors.configurationSource(source);
    }
}
