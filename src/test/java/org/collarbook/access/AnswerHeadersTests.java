package org.collarbook.access;

import static org.assertj.core.api.Assertions.assertThat;

import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Qualifier;
import org.springframework.mock.web.MockFilterChain;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;

import jakarta.servlet.Filter;

/** The headers of every answer; what each is for: OWASP HTTP Headers Cheat Sheet. */
@RegisterTest
class AnswerHeadersTests {

    private final Api api;
    private final Filter security;

    AnswerHeadersTests(Api api, @Qualifier("springSecurityFilterChain") Filter security) {
        this.api = api;
        this.security = security;
    }

    @Test
    void anAnswerForMachinesRunsNothingAndIsKeptNowhere() {
        for (var answer : new Answer[]{api.as(Role.CLERK).get("/api/customers?size=1"),
                api.anonymous().get("/api/customers"), api.as(Role.CLERK).get("/api/keys"),
                api.as(Role.CLERK).get("/api/nothing")}) {
            assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
            assertThat(answer.header("Content-Security-Policy")).contains("default-src 'none'",
                    "frame-ancestors 'none'");
            assertThat(answer.header("Referrer-Policy")).isEqualTo("no-referrer");
            assertThat(answer.header("Cache-Control")).contains("no-store");
            assertThat(answer.headers().firstValue("Strict-Transport-Security")).isEmpty();
            assertThat(answer.headers().firstValue("Access-Control-Allow-Origin")).isEmpty();
            assertThat(answer.headers().firstValue("Server")).isEmpty();
        }
    }

    @Test
    void thePagesAreOursAloneAndInNoFrame() {
        var page = api.anonymous().get("/swagger-ui/index.html").expect(200);
        assertThat(page.header("Content-Security-Policy")).contains("default-src 'self'", "frame-ancestors 'none'")
                .doesNotContain("script-src", "unsafe-eval");
        // what the policy would not run: a script written into the page
        assertThat(page.body()).doesNotContainPattern("<script[^>]*>\\s*[^<\\s]|\\son\\w+=");
    }

    @Test
    void overTlsABrowserIsToldToStayThere() throws Exception {
        var request = new MockHttpServletRequest("GET", "/api/customers");
        request.setServletPath("/api/customers");
        request.setSecure(true);
        var response = new MockHttpServletResponse();
        security.doFilter(request, response, new MockFilterChain());
        assertThat(response.getStatus()).isEqualTo(401);
        assertThat(response.getHeader("Strict-Transport-Security")).contains("max-age=31536000");
    }

    @Test
    void noOtherOriginMayAskUnlessItIsNamed() {
        var answer = api.anonymous().with("Origin", "https://portal.example")
                .with("Access-Control-Request-Method", "GET")
                .send("OPTIONS", "/api/rules", null);
        assertThat(answer.status()).isEqualTo(401);
        assertThat(answer.headers().firstValue("Access-Control-Allow-Origin")).isEmpty();
    }
}
