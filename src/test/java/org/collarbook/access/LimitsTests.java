package org.collarbook.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;

import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.test.context.TestPropertySource;

/** How much and how slowly a caller may ask, in a service of four threads with low limits. */
@RegisterTest
@TestPropertySource(properties = {"collarbook.access.requests-per-minute.filler=2",
        "collarbook.access.requests-per-minute.yard=0", "collarbook.access.calendar-reads-per-minute=2",
        "collarbook.access.strangers-noted-per-minute=0", "collarbook.access.invalid-keys-per-minute=2",
        "collarbook.bodies.time=2s", "collarbook.bodies.most=100KB",
        "collarbook.access.cors-origins=https://portal.example", "server.tomcat.threads.max=4"})
class LimitsTests {

    private static final String RULES = "/api/rules/coverage";

    private final Api api;
    private final Given given;
    private final Tables tables;

    LimitsTests(Api api, Given given, Tables tables) {
        this.api = api;
        this.given = given;
        this.tables = tables;
    }

    private Api.Session key(String... roles) {
        return api.withKey(api.as(Role.ADMINISTRATOR).post("/api/keys", Map.of("name", "limited", "roles",
                List.of(roles))).expect(201).text("/key"));
    }

    /** The headers are those of draft-ietf-httpapi-ratelimit-headers-10; Retry-After of RFC 9110, section 10.2.3. */
    @Test
    void whoAsksTooOftenIsToldWhenToComeAgain() {
        var filler = key("filler");
        for (int left = 1; left >= 0; left--) {
            var answer = filler.get(RULES).expect(200);
            assertThat(answer.header("RateLimit-Policy")).isEqualTo("\"key\";q=2;w=60");
            assertThat(answer.header("RateLimit")).matches("\"key\";r=" + left + ";t=[1-9]\\d?");
        }
        var refused = filler.get(RULES).expectProblem(429, "TOO_MANY_REQUESTS");
        // one of two comes back every thirty seconds
        assertThat(Integer.parseInt(refused.header("Retry-After"))).isBetween(1, 30);
        assertThat(refused.header("RateLimit")).startsWith("\"key\";r=0;");
        tables.unchangedBy(() -> filler.post("/api/containers", Given.cylinder()).expect(429));
        key("filler").get(RULES).expect(200);
    }

    @Test
    void theMostGenerousRoleCountsAndNoneIsWithoutALimit() {
        for (var session : List.of(key("filler", "yard"), key("yard"))) {
            for (int i = 0; i < 10; i++) {
                assertThat(session.get(RULES).expect(200).headers().firstValue("RateLimit")).isEmpty();
            }
        }
        assertThat(key("filler", "clerk").get(RULES).expect(200).header("RateLimit-Policy")).contains("q=600000");
    }

    @Test
    void aCalendarIsReadSoOftenByItsTokenAndAnotherByItsOwn() {
        var paths = new ArrayList<String>();
        for (var name : List.of("one", "two")) {
            paths.add(api.as(Role.CLERK).post("/api/calendar-feeds", Map.of("name", name)).expect(201).text("/url")
                    .substring(api.baseUrl().length()));
        }
        for (int left = 1; left >= 0; left--) {
            var answer = api.anonymous().get(paths.getFirst()).expect(200);
            assertThat(answer.header("RateLimit-Policy")).isEqualTo("\"calendar\";q=2;w=60");
            assertThat(answer.header("RateLimit")).matches("\"calendar\";r=" + left + ";t=[1-9]\\d?");
        }
        var refused = api.anonymous().with("Accept", "text/calendar").get(paths.getFirst())
                .expectProblem(429, "TOO_MANY_REQUESTS");
        // one of two comes back every thirty seconds
        assertThat(Integer.parseInt(refused.header("Retry-After"))).isBetween(1, 30);
        assertThat(refused.header("RateLimit")).startsWith("\"calendar\";r=0;");
        api.anonymous().get(paths.getLast()).expect(200);
        assertThat(api.anonymous().get("/calendars/" + "x".repeat(43) + ".ics").expectProblem(404, "NOT_FOUND")
                .headers().firstValue("RateLimit")).isEmpty();
    }

    /** From addresses of the loopback network (RFC 1122, section 3.2.1.3) that no other test comes from. */
    @Test
    void anAddressThatGuessesIsToldToComeAgainAndWhoBelongsThereGoesOn() throws IOException {
        var unused = api.as(Role.ADMINISTRATOR).post("/api/keys", Map.of("name", "new", "roles", List.of("clerk")))
                .expect(201).text("/key");
        api.as(Role.CLERK).get(RULES).expect(200);
        assertThat(asked("127.0.0.2", RULES, "cb_" + "x".repeat(43))).startsWith("HTTP/1.1 401");
        assertThat(asked("127.0.0.2", "/calendars/" + "x".repeat(43) + ".ics", null)).startsWith("HTTP/1.1 404");
        var unchanged = tables.counts();
        for (var guess : List.of("cb_" + "y".repeat(43), "e30.e30.", "x", unused)) {
            assertThat(asked("127.0.0.2", RULES, guess)).startsWith("HTTP/1.1 429").contains("TOO_MANY_REQUESTS")
                    .containsPattern("Retry-After: ([1-9]|[12][0-9]|30)\r\n");
        }
        assertThat(asked("127.0.0.2", "/calendars/" + "y".repeat(43) + ".ics", null)).startsWith("HTTP/1.1 429")
                .contains("Retry-After: ");
        assertThat(tables.counts()).isEqualTo(unchanged);
        assertThat(asked("127.0.0.2", RULES, null)).as("nothing is looked up").startsWith("HTTP/1.1 401");
        assertThat(asked("127.0.0.2", RULES, api.keyOf(Role.CLERK))).startsWith("HTTP/1.1 200");
        assertThat(asked("127.0.0.3", RULES, "cb_" + "y".repeat(43))).startsWith("HTTP/1.1 401");
        assertThat(asked("127.0.0.3", RULES, unused)).startsWith("HTTP/1.1 200");
        assertThat(asked("127.0.0.2", RULES, unused)).as("it has opened something").startsWith("HTTP/1.1 200");
    }

    private String asked(String from, String path, @Nullable String bearer) throws IOException {
        var port = URI.create(api.baseUrl()).getPort();
        try (var socket = new Socket(InetAddress.ofLiteral("127.0.0.1"), port, InetAddress.ofLiteral(from), 0)) {
            socket.setSoTimeout(60_000);
            socket.getOutputStream().write(("GET " + path + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                    + (bearer == null ? "" : "Authorization: Bearer " + bearer + "\r\n") + "\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Nobody's limit is also that of the access log. */
    @Test
    void strangersAreAllNotedWhereNoNumberIsSet() {
        for (int i = 0; i < 5; i++) {
            var denied = api.anonymous().get(RULES).expectProblem(401, "KEY_REQUIRED");
            assertThat(api.as(Role.ADMINISTRATOR).get("/api/access-log?size=50").expect(200).body())
                    .contains(denied.header("X-Request-Id"));
        }
    }

    @Test
    void aBodyThatIsTooLargeIsRefusedBeforeItIsRead() throws IOException {
        var large = "[" + " ".repeat(200_000) + "]";
        tables.unchangedBy(() -> assertThat(api.as(Role.CLERK).post("/api/containers", large)
                .expectProblem(413, "BODY_TOO_LARGE").at("/most").asLong()).isEqualTo(102_400));
        // without a length told in advance (RFC 9112, section 7.1), it ends where the limit is
        var chunked = new StringBuilder("POST /api/containers HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n"
                + "Content-Type: application/json\r\nTransfer-Encoding: chunked\r\nAuthorization: Bearer "
                + api.keyOf(Role.CLERK) + "\r\n\r\n");
        for (int i = 0; i < 20; i++) {
            chunked.append("2710\r\n").append(" ".repeat(10_000)).append("\r\n");
        }
        try (var socket = socket()) {
            socket.getOutputStream().write(chunked.append("0\r\n\r\n").toString().getBytes(StandardCharsets.US_ASCII));
            assertThat(new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
                    .startsWith("HTTP/1.1 413").contains("BODY_TOO_LARGE");
        }
        // a ledger may be larger than that
        assertThat(api.as(Role.CLERK).with("Content-Type", "text/plain").post("/api/imports", large).status())
                .isNotEqualTo(413);
        assertThat(api.as(Role.CLERK).post("/api/scan-batches", large).status()).isNotEqualTo(413);
    }

    private Socket socket() throws IOException {
        var address = URI.create(api.baseUrl());
        var socket = new Socket(address.getHost(), address.getPort());
        socket.setSoTimeout(15_000);
        return socket;
    }

    /** Begins a body of 500 bytes and sends one of them each 200 ms until the server has enough; what it answered. */
    private String trickle(String authorization) {
        try (var socket = socket()) {
            var out = socket.getOutputStream();
            out.write(("POST /api/assessments HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
                    + authorization + "Content-Length: 500\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
            var answer = CompletableFuture.supplyAsync(() -> read(socket), Thread::startVirtualThread);
            for (int i = 0; i < 500 && !answer.isDone(); i++) {
                out.write(' ');
                Thread.sleep(200);
            }
            return answer.join();
        } catch (IOException cutOff) {
            return "cut off";
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String read(Socket socket) {
        try {
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException cutOff) {
            return "cut off";
        }
    }

    @Test
    void clientsThatTrickleHoldNobodyUpAndAreCutOff() {
        var bearer = "Authorization: Bearer " + api.keyOf(Role.YARD) + "\r\n";
        long begun = System.nanoTime();
        var slow = new ArrayList<CompletableFuture<String>>();
        // more of them than threads
        for (int i = 0; i < 6; i++) {
            slow.add(CompletableFuture.supplyAsync(() -> trickle(bearer), Thread::startVirtualThread));
            slow.add(CompletableFuture.supplyAsync(() -> trickle(""), Thread::startVirtualThread));
        }
        api.as(Role.YARD).get(RULES).expect(200);
        var answers = slow.stream().map(CompletableFuture::join).toList();
        // a byte each 200 ms would have taken 100 seconds
        assertThat(System.nanoTime() - begun).isLessThan(80_000_000_000L);
        assertThat(answers).allMatch(answer -> answer.isEmpty() || answer.equals("cut off")
                || answer.startsWith("HTTP/1.1 408") || answer.startsWith("HTTP/1.1 401"));
        assertThat(answers).anyMatch(answer -> answer.contains("BODY_TOO_SLOW"))
                .anyMatch(answer -> answer.contains("KEY_REQUIRED"));
        api.as(Role.YARD).post("/api/containers/" + given.registered() + "/holds", Map.of("reason", "DENTED"))
                .expect(201);
    }

    @Test
    void headersThatTrickleHoldNobodyUp() throws IOException {
        var sockets = new ArrayList<Socket>();
        try {
            for (int i = 0; i < 8; i++) {
                var socket = socket();
                sockets.add(socket);
                socket.getOutputStream()
                        .write("GET /api/rules HTTP/1.1\r\nHost: loc".getBytes(StandardCharsets.US_ASCII));
            }
            for (int i = 0; i < 5; i++) {
                api.as(Role.YARD).get(RULES).expect(200);
            }
        } finally {
            for (var socket : sockets) {
                socket.close();
            }
        }
    }

    @Test
    void anOriginThatIsNamedMayAskAndNoOther() {
        var preflight = api.anonymous().with("Access-Control-Request-Method", "GET")
                .with("Access-Control-Request-Headers", "authorization");
        var allowed = preflight.with("Origin", "https://portal.example").send("OPTIONS", "/api/rules", null)
                .expect(200);
        assertThat(allowed.header("Access-Control-Allow-Origin")).isEqualTo("https://portal.example");
        assertThat(allowed.headers().firstValue("Access-Control-Allow-Credentials")).isEmpty();
        var another = preflight.with("Origin", "https://elsewhere.example").send("OPTIONS", "/api/rules", null)
                .expect(403);
        assertThat(another.headers().firstValue("Access-Control-Allow-Origin")).isEmpty();
    }
}
