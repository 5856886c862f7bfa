package org.collarbook.platform.web;

import java.io.IOException;

import org.collarbook.platform.Problem;
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

/**
 * A body that is too large is refused before it is read where its length was told; one that trickles is cut off, and so is
 * an answer that is read too slowly. How many bodies are on their way at once is bounded: the parts of a form the server
 * reads by itself, so that nothing else bounds them.
 */
@Component
@Order(Ordered.HIGHEST_PRECEDENCE + 10)
@EnableConfigurationProperties({BodyLimits.class, AnswerPace.class})
class BodyFilter extends OncePerRequestFilter {

    private final BodyLimits limits;
    private final AnswerPace pace;
    private final JsonMapper json;
    private final BodiesUnderWay bodies;

    BodyFilter(BodyLimits limits, AnswerPace pace, JsonMapper json) {
        this.limits = limits;
        this.pace = pace;
        this.json = json;
        this.bodies = new BodiesUnderWay(limits.atOnce(), limits.allAtOnce());
    }

    @Override
    protected void doFilterInternal(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        if (request.getContentLengthLong() == 0
                || request.getContentLengthLong() < 0 && request.getHeader("Transfer-Encoding") == null) {
            paced(request, response, chain);
            return;
        }
        long most = limits.mostOf(request);
        if (request.getContentLengthLong() > most) {
            refuse(response, BodyRefused.tooLarge(most));
            return;
        }
        var place = bodies.take(request);
        if (place.isEmpty()) {
            response.setHeader(HttpHeaders.RETRY_AFTER, Busy.SECONDS);
            refuse(response, Busy.TOO_MANY_BODIES);
            return;
        }
        try {
            paced(new LimitedBody(request, most, limits.timeOf(request), place.get()::leave), response, chain);
        } finally {
            place.get().leave();
        }
    }

    private void paced(HttpServletRequest request, HttpServletResponse response, FilterChain chain)
            throws ServletException, IOException {
        var answer = new PacedAnswer(response, pace);
        chain.doFilter(request, answer);
        answer.breakOff();
    }

    private void refuse(HttpServletResponse response, Problem problem) throws IOException {
        // what is still on its way is not read
        response.setHeader(HttpHeaders.CONNECTION, "close");
        response.setStatus(problem.status().value());
        response.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
        response.setCharacterEncoding("UTF-8");
        json.writeValue(response.getOutputStream(), problem.body());
    }
}
