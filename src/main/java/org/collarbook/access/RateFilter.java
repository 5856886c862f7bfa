package org.collarbook.access;

import java.io.IOException;

import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/** Tells each caller what is left of its limit, and keeps it. */
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
        if (authentication != null && authentication.getPrincipal() instanceof Caller caller) {
            var refusal = rates.take(caller, response);
            if (refusal.isPresent()) {
                problems.write(response, refusal.get());
                return;
            }
        }
        chain.doFilter(request, response);
    }
}
