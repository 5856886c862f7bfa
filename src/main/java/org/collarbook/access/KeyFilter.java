package org.collarbook.access;

import java.io.IOException;

import org.springframework.http.HttpHeaders;
import org.springframework.security.authentication.UsernamePasswordAuthenticationToken;
import org.springframework.security.core.authority.SimpleGrantedAuthority;
import org.springframework.security.core.context.SecurityContextHolder;
import org.springframework.web.filter.OncePerRequestFilter;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/** Turns a Bearer key into a {@link Caller}. A key that is not valid leaves nobody, and the doors stay shut. */
class KeyFilter extends OncePerRequestFilter {

    private static final String SCHEME = "Bearer ";

    private final Keys keys;

    KeyFilter(Keys keys) {
        this.keys = keys;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        var header = request.getHeader(HttpHeaders.AUTHORIZATION);
        if (header != null && header.regionMatches(true, 0, SCHEME, 0, SCHEME.length())) {
            ApiKey.parse(header.substring(SCHEME.length()).strip()).flatMap(keys::callerOf)
                    .ifPresent(KeyFilter::letIn);
        }
        chain.doFilter(request, response);
    }

    private static void letIn(Caller caller) {
        var authorities = caller.roles().stream().map(role -> new SimpleGrantedAuthority(role.word())).toList();
        var context = SecurityContextHolder.createEmptyContext();
        context.setAuthentication(UsernamePasswordAuthenticationToken.authenticated(caller, null, authorities));
        SecurityContextHolder.setContext(context);
    }
}
