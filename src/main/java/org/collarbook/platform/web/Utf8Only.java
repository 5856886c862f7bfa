package org.collarbook.platform.web;

import java.io.IOException;
import java.util.Collections;
import java.util.regex.Pattern;

import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/** Answers are written in UTF-8: whoever wants another charset is told before anything is done, not after. */
@Component
class Utf8Only extends OncePerRequestFilter {

    private static final Pattern OTHER_CHARSET = Pattern.compile("charset\\s*=\\s*\"?(?!utf-8)",
            Pattern.CASE_INSENSITIVE);

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (Collections.list(request.getHeaders("Accept")).stream().anyMatch(OTHER_CHARSET.asPredicate())) {
            response.sendError(HttpServletResponse.SC_NOT_ACCEPTABLE);
        } else {
            chain.doFilter(request, response);
        }
    }
}
