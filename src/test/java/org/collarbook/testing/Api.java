package org.collarbook.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.jspecify.annotations.Nullable;
import org.springframework.core.env.Environment;
import org.springframework.jdbc.core.simple.JdbcClient;

import tools.jackson.databind.json.JsonMapper;

/**
 * A client of the running service: {@code api.as(Role.CLERK).post("/api/containers", body)}. A text or bytes are sent as
 * they are, anything else as JSON.
 */
public final class Api {

    private static final HttpClient HTTP = HttpClient.newHttpClient();

    private final Environment environment;
    private final JsonMapper json;
    private final TestKeys keys;

    Api(Environment environment, JsonMapper json, JdbcClient jdbc) {
        this.environment = environment;
        this.json = json;
        this.keys = new TestKeys(jdbc);
    }

    public Session as(Role role) {
        return withKey(keyOf(role));
    }

    public String keyOf(Role role) {
        return keys.of(role, null);
    }

    /** A portal confined to one customer. */
    public Session asPortalOf(CustomerId customer) {
        return withKey(portalKeyOf(customer));
    }

    public String portalKeyOf(CustomerId customer) {
        return keys.of(Role.PORTAL, customer);
    }

    public Session withKey(String key) {
        return new Session(Map.of("Authorization", "Bearer " + key));
    }

    public Session anonymous() {
        return new Session(Map.of());
    }

    public String baseUrl() {
        return "http://localhost:" + environment.getRequiredProperty("local.server.port");
    }

    /** Requests with the same headers. */
    public final class Session {

        private final Map<String, String> headers;

        private Session(Map<String, String> headers) {
            this.headers = headers;
        }

        public Session with(String header, String value) {
            var more = new LinkedHashMap<>(headers);
            more.put(header, value);
            return new Session(more);
        }

        public Session ifMatch(Answer read) {
            return with("If-Match", read.etag());
        }

        public Answer get(String path) {
            return send("GET", path, null);
        }

        public Answer post(String path, Object body) {
            return send("POST", path, body);
        }

        public Answer put(String path, Object body) {
            return send("PUT", path, body);
        }

        public Answer delete(String path) {
            return send("DELETE", path, null);
        }

        public Answer send(String method, String path, @Nullable Object body) {
            var request = HttpRequest.newBuilder(URI.create(baseUrl() + path)).method(method,
                    body == null
                            ? HttpRequest.BodyPublishers.noBody()
                            : HttpRequest.BodyPublishers.ofByteArray(bytes(body)));
            if (body != null && !headers.containsKey("Content-Type")) {
                request.header("Content-Type", "application/json");
            }
            headers.forEach(request::header);
            try {
                var response = HTTP.send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
                RefusedRequests.count(response.statusCode());
                var answer = new Answer(response.statusCode(), response.headers(), response.body(), json);
                Contract.check(method, path, answer);
                return answer;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new IllegalStateException(e);
            }
        }

        private byte[] bytes(Object body) {
            return switch (body) {
                case byte[] raw -> raw;
                case String text -> text.getBytes(StandardCharsets.UTF_8);
                default -> json.writeValueAsBytes(body);
            };
        }
    }
}
