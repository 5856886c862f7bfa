package org.collarbook.access;

import java.io.IOException;
import java.util.concurrent.TimeUnit;

import org.collarbook.platform.Problem;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/** Tells each caller what is left of its limit, in the headers of draft-ietf-httpapi-ratelimit-headers-10, and keeps it. */
class RateFilter extends OncePerRequestFilter {

    private final Rates rates;
    private final ProblemAnswers problems;

    RateFilter(Rates rates, ProblemAnswers problems) {
        this.rates = rates;
        this.problems = problems;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        var authentication = SecurityContextHolder.getContext().getAuthentication();
        if (authentication != null && authentication.getPrincipal() instanceof Caller caller
                && !isTaken(caller, response)) {
            return;
        }
        chain.doFilter(request, response);
    }

    private boolean isTaken(Caller caller, HttpServletResponse response) throws IOException {
        long perMinute = rates.perMinute(caller);
        if (perMinute == 0) {
            return true;
        }
        var left = rates.take(caller, perMinute);
        response.setHeader("RateLimit-Policy", "\"key\";q=" + perMinute + ";w=" + Rates.WINDOW.toSeconds());
        response.setHeader("RateLimit", "\"key\";r=" + left.getRemainingTokens() + ";t="
                + seconds(left.getNanosToWaitForReset()));
        if (!left.isConsumed()) {
            response.setHeader(HttpHeaders.RETRY_AFTER, String.valueOf(seconds(left.getNanosToWaitForRefill())));
            problems.write(response, Problem.of(HttpStatus.TOO_MANY_REQUESTS, "TOO_MANY_REQUESTS", "More than "
                    + perMinute + " requests a minute with this key: come again after Retry-After seconds."));
        }
        return left.isConsumed();
    }

    /** Rounded up, and never 0: a second early is refused again. */
    private static long seconds(long nanos) {
        return Math.max(1, TimeUnit.NANOSECONDS.toSeconds(nanos + TimeUnit.SECONDS.toNanos(1) - 1));
    }
}
