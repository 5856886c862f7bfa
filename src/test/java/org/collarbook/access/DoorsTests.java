package org.collarbook.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.http.HttpMethod;
import org.springframework.web.servlet.mvc.method.RequestMappingInfo;
import org.springframework.web.servlet.mvc.method.annotation.RequestMappingHandlerMapping;

/** The table of doors against the endpoints that exist, and against what the server enforces, role by role. */
@RegisterTest
class DoorsTests {

    private static final String NO_SUCH_ID = "00000000-0000-7000-8000-000000000000";

    private final Api api;
    private final Given given;
    private final RequestMappingHandlerMapping mappings;

    DoorsTests(Api api, Given given,
            @Qualifier("requestMappingHandlerMapping") RequestMappingHandlerMapping mappings) {
        this.api = api;
        this.given = given;
        this.mappings = mappings;
    }

    @Test
    void everyEndpointHasALineAndEveryLineAnEndpoint() {
        var served = new TreeSet<String>();
        mappings.getHandlerMethods().keySet().forEach(info -> served.addAll(lines(info)));
        var listed = new TreeSet<String>();
        Doors.TABLE.forEach(door -> listed.add(door.method() + " " + door.path()));
        assertThat(listed).isEqualTo(served);
    }

    private static Set<String> lines(RequestMappingInfo info) {
        var lines = new TreeSet<String>();
        for (var path : info.getPatternValues()) {
            if (path.startsWith("/api/")) {
                info.getMethodsCondition().getMethods()
                        .forEach(method -> lines.add(method + " " + path.replaceAll("\\{[^}]+}", "*")));
            }
        }
        return lines;
    }

    @Test
    void theServerEnforcesTheTableRoleByRole() {
        var wrong = new ArrayList<String>();
        for (var door : Doors.TABLE) {
            for (var role : Role.values()) {
                var answer = answer(role, door);
                // let in, it is refused by the endpoint itself for the id or the body; shut out, always alike
                boolean shut = answer.status() == 403 && answer.text("/code").equals("FORBIDDEN");
                if (shut == door.roles().contains(role) || answer.status() == 401 || answer.status() >= 500) {
                    wrong.add(role + " " + door + " answered " + answer);
                }
            }
            int anonymous = api.anonymous().send(door.method().name(), door.path().replace("*", NO_SUCH_ID), body(door))
                    .status();
            if (anonymous != 401) {
                wrong.add("nobody " + door + " answered " + anonymous);
            }
        }
        assertThat(wrong).isEmpty();
    }

    private Answer answer(Role role, Doors.Door door) {
        var session = role == Role.PORTAL ? api.asPortalOf(new CustomerId(given.customer())) : api.as(role);
        return session.send(door.method().name(), door.path().replace("*", NO_SUCH_ID), body(door));
    }

    private static String body(Doors.Door door) {
        return List.of(HttpMethod.GET, HttpMethod.DELETE).contains(door.method()) ? "" : "[";
    }

    @Test
    void whatIsOpenWithoutAKeyIsKnown() {
        var open = new TreeSet<String>();
        mappings.getHandlerMethods().keySet().forEach(info -> info.getPatternValues().stream()
                .filter(path -> !path.startsWith("/api/")).forEach(open::add));
        // "/error" answers for the server itself; to somebody who asks for it, it is closed
        assertThat(open).containsExactly("/api-docs", "/api-docs.yaml", "/api-docs/swagger-config",
                "/calendars/{token}.ics", "/error", "/swagger-ui.html");
        for (var path : List.of("/actuator/health", "/api-docs", "/swagger-ui/index.html")) {
            api.anonymous().get(path).expect(200);
        }
        api.anonymous().get("/error").expectProblem(401, "KEY_REQUIRED");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/nothing", "/actuator", "/actuator/env", "/actuator/heapdump", "/error",
            "/api/keys/a/b"})
    void whatIsNotListedIsClosedEvenToTheAdministrator(String path) {
        for (var method : List.of("GET", "POST", "PUT", "DELETE", "PATCH")) {
            api.anonymous().send(method, path, null).expectProblem(401, "KEY_REQUIRED");
            api.as(Role.ADMINISTRATOR).send(method, path, null).expectProblem(404, "NOT_FOUND");
        }
    }

    @Test
    void anotherMethodIsNotAllowed() {
        for (var path : List.of("/api/keys", "/api/rules/us.180.209.e", "/api-docs", "/actuator/health", "/")) {
            api.anonymous().send("PATCH", path, null).expectProblem(401, "KEY_REQUIRED");
        }
        var answer = api.as(Role.ADMINISTRATOR).send("PATCH", "/api/keys", "{}")
                .expectProblem(405, "METHOD_NOT_ALLOWED");
        assertThat(answer.header("Allow")).isEqualTo("GET, HEAD, POST");
        api.asPortalOf(new CustomerId(given.customer())).send("OPTIONS", "/api/keys", null)
                .expectProblem(405, "METHOD_NOT_ALLOWED");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "cb_", "cb_0000000000000000000000000000000000000000000", "admin", "administrator",
            "collarbook",
            "eyJhbGciOiJub25lIn0.eyJzdWIiOiJ4IiwiY29sbGFyYm9va19yb2xlcyI6WyJhZG1pbmlzdHJhdG9yIl19."})
    void noKeyIsGoodByDefault(String key) {
        api.withKey(key).get("/api/keys").expectProblem(401, "KEY_REQUIRED");
        for (var basic : List.of("admin:admin", "user:", "administrator:")) {
            api.anonymous().with("Authorization", "Basic " + Base64.getEncoder()
                    .encodeToString(basic.getBytes(StandardCharsets.UTF_8))).get("/api/keys")
                    .expectProblem(401, "KEY_REQUIRED");
        }
    }
}
