package org.collarbook.platform;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Map;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;

import org.collarbook.access.Role;
import org.collarbook.intake.Ledger;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Requests that no client library would send: each is refused as a problem, stores nothing and harms nobody. */
@RegisterTest
class HostileRequestTests {

    private final Api api;
    private final Tables tables;

    HostileRequestTests(Api api, Tables tables) {
        this.api = api;
        this.tables = tables;
    }

    /** Written to the socket as it stands, since a URI could not hold it. */
    private String raw(String request) throws IOException {
        var address = URI.create(api.baseUrl());
        try (var socket = new Socket(address.getHost(), address.getPort())) {
            socket.setSoTimeout(60_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.shutdownOutput();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private String get(String target) throws IOException {
        return raw("GET " + target + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nAuthorization: Bearer "
                + api.keyOf(Role.ADMINISTRATOR) + "\r\n\r\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/customers?size=%", "/api/customers?size=%zz", "/api/customers?%ff=1",
            "/api/customers?a=%C0%80", "/api/containers?cursor=%ff", "/api/schedule?cursor=%ff",
            "/api/fill-check?tag=%ED%A0%80", "/api/pull-list?before=2027-02-01&customer=%ED%A0%80",
            "/api/routes/%ED%A0%80/pull-list", "/api/routes/x%00y/pull-list", "/api/pull-list?depot=%00",
            "/api/pull-list/place-unknown?before=2027-02-01&cursor=%00",
            "/api/fill-check?tag=x&specificGravity=1e-999999999", "/api/fill-check?serial=x%00y", "/error",
            "/api/containers/%00", "/api//containers/..%2f", "/api/containers;x=1/1"})
    void unreadableQueriesAreRefused(String target) throws IOException {
        var answer = get(target);
        assertThat(answer).matches("(?s)HTTP/1.1 4\\d\\d .*").contains("application/problem+json");
        api.as(Role.CLERK).get("/api/customers?size=1").expect(200);
    }

    /** Read late, by whoever looks at all the names; what it says must not come to stand in the log as a line. */
    @ParameterizedTest
    @ValueSource(strings = {"/api/schedule?%0aFORGED=1", "/api/schedule?%00=1",
            "/api/portal/containers?%7f=1&customer=x",
            "/api/portal/sites?%0d%0aINFO=1"})
    void aNameOfControlCharactersIsRefused(String target) throws IOException {
        assertThat(get(target)).matches("(?s)HTTP/1.1 400 .*").contains("application/problem+json");
    }

    @Test
    void aListIsNotSentWhereItsEndCannotBeTold() throws IOException {
        for (var list : new String[]{"/api/ledger?format=csv", "/api/schedule?format=csv",
                "/api/schedule?format=xlsx"}) {
            assertThat(raw("GET " + list + " HTTP/1.0\r\nHost: localhost\r\nAuthorization: Bearer "
                    + api.keyOf(Role.CLERK) + "\r\n\r\n")).contains(" 505 ").contains("HTTP_VERSION");
        }
        assertThat(raw("GET /api/customers?size=1 HTTP/1.0\r\nHost: localhost\r\nAuthorization: Bearer "
                + api.keyOf(Role.CLERK) + "\r\n\r\n")).contains(" 200 ");
    }

    /** Without a key, so that nobody reads the body that the request promises. */
    @Test
    void aStrangerWhoSendsNoBodyIsLetGoSoon() throws IOException {
        var address = URI.create(api.baseUrl());
        try (var socket = new Socket(address.getHost(), address.getPort())) {
            // the server itself waits for ten seconds
            socket.setSoTimeout(9_000);
            socket.getOutputStream().write(("POST /api/fills HTTP/1.1\r\nHost: localhost\r\nContent-Type:"
                    + " application/json\r\nContent-Length: 5000\r\n\r\n{").getBytes(StandardCharsets.ISO_8859_1));
            assertThat(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8)).contains(" 401 ");
        }
    }

    @Test
    void anAnswerInAnotherCharsetIsRefusedBeforeAnythingIsDone() {
        tables.unchangedBy(() -> api.as(Role.CLERK).with("Accept", "application/json;charset=utf-16")
                .post("/api/customers", Map.of("code", "UTF16", "name", "Wide")).expect(406));
        api.as(Role.CLERK).with("Accept", "application/json;charset=UTF-8").get("/api/customers?size=1").expect(200);
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e300", "5", "20800", "[2026,12,1]", "true", "\"2026-12-01T00:00:00Z\"", "\"soon\""})
    void aDayIsWrittenAsADay(String day) {
        tables.unchangedBy(() -> assertThat(api.as(Role.CLERK)
                .post("/api/pull-plans", "{\"from\":" + day + ",\"shop\":{\"perWeek\":1}}")
                .expectProblem(400, "INVALID_INPUT")
                .errors()).containsEntry("/from", "WRONG_TYPE"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"1e300", "5", "true", "[]", "\"2026-12-01\""})
    void aMomentIsWrittenAsAMoment(String moment) {
        tables.unchangedBy(() -> assertThat(api.as(Role.CLERK).post("/api/movements", "{\"occurredAt\":" + moment + "}")
                .expectProblem(400, "INVALID_INPUT").errors()).containsEntry("/occurredAt", "WRONG_TYPE"));
    }

    @Test
    void moreParametersThanAnybodyNeedsAreRefused() throws IOException {
        assertThat(get("/api/customers?" + "a=1&".repeat(1500))).startsWith("HTTP/1.1 4");
    }

    @ParameterizedTest
    @ValueSource(strings = {"multipart/form-data", "multipart/form-data; boundary=b", "application/yaml", "*/*",
            "text/csv", "application/xml"})
    void bodiesThatAreNotWhatTheySayAreRefused(String type) {
        tables.unchangedBy(() -> {
            for (var path : new String[]{"/api/imports", "/api/containers"}) {
                assertThat(api.as(Role.CLERK).with("Content-Type", type).post(path, "--b\r\nContent-Disp").status())
                        .isBetween(400, 415);
            }
        });
    }

    @ParameterizedTest
    @ValueSource(strings = {"{\"name\":\"x\",\"roles\":[null]}",
            "{\"name\":\"x\",\"roles\":[\"clerk\"],\"expiresAt\":\"+1000000000-12-31T23:59:59Z\"}", "[]", "{", "nul",
            "{\"name\":{}}", "{\"name\":\"x\",\"name\":\"y\",\"roles\":[\"clerk\"]}", "\"\\ud800\""})
    void keysAreNotIssuedForNonsense(String body) {
        assertThat(api.as(Role.ADMINISTRATOR).post("/api/keys", body).status()).isEqualTo(400);
    }

    @Test
    void theHeadOfWhatMayBeReadMayBeAskedFor() throws IOException {
        var head = raw("HEAD /api/customers?size=1 HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                + "Authorization: Bearer " + api.keyOf(Role.CLERK) + "\r\n\r\n");
        assertThat(head).startsWith("HTTP/1.1 200");
    }

    @Test
    void aFileNameIsKeptWithoutWhatCannotBeShown() {
        var body = "--b\r\nContent-Disposition: form-data; name=\"ledger\"; filename=\"a\u0000b.csv\"\r\n\r\n"
                + "specification,serial\r\nDOT-4BA240,1\r\n--b--\r\n";
        var answer = api.as(Role.CLERK).with("Content-Type", "multipart/form-data; boundary=b").post("/api/imports",
                body);
        assertThat(answer.status()).isIn(202, 400);
        if (answer.status() == 202) {
            Ledger.over(api, answer, "CHECKED");
        }
    }
}
