package org.collarbook.access;

import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;

import org.collarbook.platform.Problem;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.HttpStatus;
import org.springframework.security.access.AccessDeniedException;
import org.springframework.security.core.AuthenticationException;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.security.web.AuthenticationEntryPoint;
import org.springframework.security.web.access.AccessDeniedHandler;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/** What those are told who are not let in. Without a key everything is a 401, whether it exists or not. */
class ClosedDoors implements AuthenticationEntryPoint, AccessDeniedHandler {

    private final ProblemAnswers problems;

    ClosedDoors(ProblemAnswers problems) {
        this.problems = problems;
    }

    @Override
    public void commence(HttpServletRequest request, HttpServletResponse response, AuthenticationException reason)
            throws IOException {
        unauthenticated(request, response);
    }

    private void unauthenticated(HttpServletRequest request, HttpServletResponse response) throws IOException {
        // RFC 6750, section 3: the error is named only where something was sent
        response.setHeader(HttpHeaders.WWW_AUTHENTICATE,
                request.getHeader(HttpHeaders.AUTHORIZATION) == null ? "Bearer" : "Bearer error=\"invalid_token\"");
        problems.write(response, Problem.of(HttpStatus.UNAUTHORIZED, "KEY_REQUIRED",
                "Send a valid API key as \"Authorization: Bearer cb_…\". Keys are issued by an administrator."));
    }

    @Override
    public void handle(HttpServletRequest request, HttpServletResponse response, AccessDeniedException reason)
            throws IOException {
        if (SecurityContextHolder.getContext().getAuthentication() == null) {
            unauthenticated(request, response);
            return;
        }
        var method = HttpMethod.valueOf(request.getMethod());
        var here = Doors.at(request.getRequestURI());
        if (here.isEmpty()) {
            problems.write(response, Problem.of(HttpStatus.NOT_FOUND, "NOT_FOUND", "Nothing is served at this path."));
        } else if (here.stream().noneMatch(door -> door.takes(method))) {
            response.setHeader(HttpHeaders.ALLOW, allowed(here));
            problems.write(response, Problem.of(HttpStatus.METHOD_NOT_ALLOWED, "METHOD_NOT_ALLOWED",
                    "This path does not take " + method + ", but " + allowed(here) + "."));
        } else {
            problems.write(response, Problem.of(HttpStatus.FORBIDDEN, "FORBIDDEN", "This key's roles do not open "
                    + method + " " + here.getFirst().path() + "."));
        }
    }

    private static String allowed(List<Doors.Door> doors) {
        return doors.stream().flatMap(door -> door.methods().stream()).map(HttpMethod::name).distinct().sorted()
                .collect(Collectors.joining(", "));
    }
}
