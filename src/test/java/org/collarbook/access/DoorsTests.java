package org.collarbook.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
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
                int status = status(role, door);
                if ((status == 403) == door.roles().contains(role)) {
                    wrong.add(role + " " + door + " answered " + status);
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

    private int status(Role role, Doors.Door door) {
        var session = role == Role.PORTAL ? api.asPortalOf(new CustomerId(given.customer())) : api.as(role);
        return session.send(door.method().name(), door.path().replace("*", NO_SUCH_ID), body(door)).status();
    }

    private static String body(Doors.Door door) {
        return List.of(HttpMethod.GET, HttpMethod.DELETE).contains(door.method()) ? "" : "[";
    }

    @Test
    void whatIsNotListedIsClosedEvenToTheAdministrator() {
        for (var path : List.of("/api/nothing", "/actuator", "/actuator/env", "/actuator/heapdump")) {
            api.as(Role.ADMINISTRATOR).get(path).expectProblem(403, "FORBIDDEN");
        }
    }
}
