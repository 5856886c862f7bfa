package org.collarbook.access;

import java.io.IOException;

import org.collarbook.platform.Problem;
import org.springframework.http.MediaType;
import org.springframework.stereotype.Component;

import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.json.JsonMapper;

/** What is refused before a controller is reached leaves as a problem detail all the same. */
@Component
class ProblemAnswers {

    private final JsonMapper json;

    ProblemAnswers(JsonMapper json) {
        this.json = json;
    }

    void write(HttpServletResponse response, Problem problem) throws IOException {
        response.setStatus(problem.status().value());
        response.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
        response.setCharacterEncoding("UTF-8");
        // neither flushed nor closed: it leaves when the request is settled
        response.getOutputStream().write(json.writeValueAsBytes(problem.body()));
    }
}
