package org.collarbook.platform.web;

import java.io.IOException;

import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;
import org.springframework.web.filter.OncePerRequestFilter;

import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.json.JsonMapper;

/** A body that is too large is refused before it is read where its length was told; one that trickles is cut off. */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 10)
@EnableConfigurationProperties(BodyLimits.class)
class BodyFilter extends OncePerRequestFilter {

    private final BodyLimits limits;
    private final JsonMapper json;

    BodyFilter(BodyLimits limits, JsonMapper json) {
        this.limits = limits;
        this.json = json;
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (request.getContentLengthLong() == 0
                || request.getContentLengthLong() < 0 && request.getHeader("Transfer-Encoding") == null) {
            chain.doFilter(request, response);
            return;
        }
        long most = limits.mostOf(request);
        if (request.getContentLengthLong() > most) {
            refuse(response, most);
        } else {
            chain.doFilter(new LimitedBody(request, most, limits.timeOf(request)), response);
        }
    }

    private void refuse(HttpServletResponse response, long most) throws IOException {
        var problem = BodyRefused.tooLarge(most);
        // what is still on its way is not read
        response.setHeader(HttpHeaders.CONNECTION, "close");
        response.setStatus(problem.status().value());
        response.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
        response.setCharacterEncoding("UTF-8");
        json.writeValue(response.getOutputStream(), problem.body());
    }
}
