package org.collarbook.access;

import java.io.IOException;
import java.util.Optional;

import org.collarbook.platform.ProblemException;
import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/**
 * Turns what a request bears into a {@link Caller}: a key, or else a token of the issuer. What is not valid leaves
 * nobody, and the doors stay shut.
 */
class KeyFilter extends OncePerRequestFilter {

    private static final String SCHEME = "Bearer ";

    private final Keys keys;
    private final Tokens tokens;
    private final Guesses guesses;
    private final ProblemAnswers problems;

    KeyFilter(Keys keys, Tokens tokens, Guesses guesses, ProblemAnswers problems) {
        this.keys = keys;
        this.tokens = tokens;
        this.guesses = guesses;
        this.problems = problems;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        var header = request.getHeader(HttpHeaders.AUTHORIZATION);
        if (header != null && header.regionMatches(true, 0, SCHEME, 0, SCHEME.length())) {
            try {
                guesses.open(header.substring(SCHEME.length()).strip(), request, response, this::callerOf)
                        .ifPresent(KeyFilter::letIn);
            } catch (ProblemException refused) {
                if (!response.containsHeader(HttpHeaders.RETRY_AFTER)) {
                    response.setHeader(HttpHeaders.RETRY_AFTER, "30");
                }
                problems.write(response, refused.problem());
                return;
            }
        }
        chain.doFilter(request, response);
    }

    private Optional<Caller> callerOf(String borne) {
        return borne.startsWith("cb_") ? ApiKey.parse(borne).flatMap(keys::callerOf) : tokens.callerOf(borne);
    }

    private static void letIn(Caller caller) {
        var authorities = caller.roles().stream().map(role -> new SimpleGrantedAuthority(role.word())).toList();
        var context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(UsernamePasswordAuthenticationToken.authenticated(caller, null, authorities));
        SecurityContextHolder.setContext(context);
    }
}
