package org.collarbook.access;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicLong;
import java.util.regex.Pattern;

import org.collarbook.platform.Ids;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;
import org.springframework.web.util.ContentCachingResponseWrapper;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/**
 * Gives each request its id, and notes it if it was a write or was denied: answered 401, 403 or 429, and to a portal 404,
 * which is what it is told of another customer's.
 */
class AccessLogFilter extends OncePerRequestFilter {

    static final String REQUEST_ID = "X-Request-Id";

    private static final Logger log = LoggerFactory.getLogger(AccessLogFilter.class);
    private static final Set<String> READS = Set.of("GET", "HEAD", "OPTIONS");
    private static final Set<Integer> DENIALS = Set.of(401, 403, 429);
    /** What an id of ours looks like: an id, a code, a day. Anything else, such as a key in the wrong place, is not kept. */
    private static final Pattern ID = Pattern.compile("(?!cb_)[A-Za-z0-9._-]{1,60}");
    private static final Pattern UUID_TAIL = Pattern
            .compile(".*/(\\p{XDigit}{8}(?:-\\p{XDigit}{4}){3}-\\p{XDigit}{12})");

    private final AccessLog lines;
    private final Strangers strangers;
    private final AtomicLong unwritten = new AtomicLong();

    AccessLogFilter(AccessLog lines, Strangers strangers) {
        this.lines = lines;
        this.strangers = strangers;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        var id = Ids.next();
        response.setHeader(REQUEST_ID, id.toString());
        var door = door(request);
        if (READS.contains(request.getMethod()) || door != null && Doors.READS_BY_POST.contains(door.path())) {
            settle(id, door, true, request, response, chain);
        } else {
            // what was recorded is told once it is noted too
            var held = new ContentCachingResponseWrapper(response);
            settle(id, door, false, request, held, chain);
            held.copyBodyToResponse();
        }
    }

    private void settle(UUID id, Doors.@Nullable Door door, boolean read, HttpServletRequest request,
            HttpServletResponse response, FilterChain chain) throws ServletException, IOException {
        int status = HttpServletResponse.SC_INTERNAL_SERVER_ERROR;
        try {
            chain.doFilter(request, response);
            status = response.getStatus();
        } finally {
            note(id, door, read, request, response, status);
        }
    }

    private void note(UUID id, Doors.@Nullable Door door, boolean read, HttpServletRequest request,
            HttpServletResponse response, int status) {
        var authentication = SecurityContextHolder.getContext().getAuthentication();
        var caller = authentication != null && authentication.getPrincipal() instanceof Caller known ? known : null;
        boolean denied = DENIALS.contains(status)
                || status == 404 && caller != null && caller.roles().contains(Role.PORTAL);
        if (read && !denied) {
            return;
        }
        if (caller == null && !strangers.mayBeNoted()) {
            log.warn("{} requests of strangers were answered {} and not noted one by one", unwritten.incrementAndGet(),
                    status);
            return;
        }
        lines.write(id, caller, request.getMethod(), door == null ? null : door.path(), ids(request, response, door),
                status, denied);
    }

    private static Doors.@Nullable Door door(HttpServletRequest request) {
        var here = Doors.at(request.getRequestURI());
        var method = HttpMethod.valueOf(request.getMethod());
        return here.stream().filter(door -> door.takes(method)).findFirst()
                .orElse(here.isEmpty() ? null : here.getFirst());
    }

    private static List<String> ids(HttpServletRequest request, HttpServletResponse response,
            Doors.@Nullable Door door) {
        var ids = new ArrayList<String>();
        if (door != null) {
            var steps = door.path().split("/");
            var asked = request.getRequestURI().split("/");
            for (int i = 0; i < steps.length; i++) {
                if (steps[i].equals("*")) {
                    // nothing stands after a slash at the end
                    ids.add(i < asked.length && ID.matcher(asked[i]).matches() ? asked[i] : "?");
                }
            }
        }
        var made = UUID_TAIL.matcher(String.valueOf(response.getHeader(HttpHeaders.LOCATION)));
        if (made.matches()) {
            ids.add(made.group(1));
        }
        return ids;
    }
}
