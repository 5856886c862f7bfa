package org.collarbook.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.test.context.TestConfiguration;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Import;
import org.springframework.core.annotation.Order;
import org.springframework.security.config.annotation.web.builders.HttpSecurity;
import org.springframework.security.web.SecurityFilterChain;
import org.springframework.test.context.TestPropertySource;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

import jakarta.servlet.http.HttpServletResponse;

/** Who reads an answer too slowly loses it; and one that fails half-way is never taken for whole. */
@RegisterTest
@Import(SlowReaderTests.Doors.class)
@TestPropertySource(properties = {"collarbook.answers.patience=3s", "collarbook.answers.per-second=2MB",
        "server.tomcat.connection-timeout=12s", "collarbook.bodies.at-once=3", "collarbook.bodies.time=20s"})
class SlowReaderTests {

    private static final byte[] LINE = "a line of a list, and so on\n".getBytes(StandardCharsets.US_ASCII);
    private static final int LINES = 2_000_000;

    private final Api api;
    private final Doors.Lists lists;
    private final int port;

    SlowReaderTests(Api api, Doors.Lists lists, @Value("${local.server.port}") int port) {
        this.api = api;
        this.lists = lists;
        this.port = port;
    }

    @TestConfiguration(proxyBeanMethods = false)
    static class Doors {

        @Bean
        @Order(0)
        SecurityFilterChain openDoor(HttpSecurity http) {
            return http.securityMatcher("/slow/**")
                    .authorizeHttpRequests(requests -> requests.anyRequest().permitAll()).build();
        }

        @RestController
        static class Lists {

            private volatile CompletableFuture<Exception> ended = new CompletableFuture<>();

            @GetMapping(path = "/slow/list", produces = "text/csv")
            void list(HttpServletResponse response) throws IOException {
                try {
                    for (int i = 0; i < LINES; i++) {
                        response.getOutputStream().write(LINE);
                    }
                    ended.complete(new Exception("it was read to its end"));
                } catch (IOException e) {
                    ended.complete(e);
                    throw e;
                }
            }

            @GetMapping(path = "/slow/broken", produces = "text/csv")
            void broken(HttpServletResponse response) throws IOException {
                for (int i = 0; i < 10_000; i++) {
                    response.getOutputStream().write(LINE);
                }
                throw new IllegalStateException("the list broke");
            }
        }
    }

    private Socket asking() throws IOException {
        var socket = new Socket();
        socket.setReceiveBufferSize(4096);
        socket.connect(new InetSocketAddress("localhost", port));
        socket.getOutputStream().write("GET /slow/list HTTP/1.1\r\nHost: localhost\r\n\r\n"
                .getBytes(StandardCharsets.US_ASCII));
        return socket;
    }

    @Test
    @Timeout(60)
    void oneWhoReadsALittleNowAndThenIsCutOff() throws Exception {
        lists.ended = new CompletableFuture<>();
        var tail = "";
        try (var socket = asking()) {
            var buffer = new byte[1 << 15];
            for (int read = 0; read >= 0; read = socket.getInputStream().read(buffer)) {
                Thread.sleep(lists.ended.isDone() ? 0 : 50);
                tail = new String(buffer, 0, Math.max(read, 0), StandardCharsets.US_ASCII);
            }
        }
        assertThat(lists.ended.join()).hasMessageContaining("was read too slowly");
        assertThat(tail).as("the last chunk, which would tell that it is whole").doesNotEndWith("0\r\n\r\n");
    }

    @Test
    @Timeout(60)
    void oneWhoReadsNothingIsCutOff() throws Exception {
        lists.ended = new CompletableFuture<>();
        try (var socket = asking()) {
            assertThat(socket.isConnected()).isTrue();
            assertThat(lists.ended.get(30, TimeUnit.SECONDS)).isInstanceOf(IOException.class);
        }
    }

    @Test
    void oneWhoReadsAsItComesGetsItAll() throws Exception {
        lists.ended = new CompletableFuture<>();
        try (var body = HttpClient.newHttpClient().send(HttpRequest.newBuilder(URI.create(api.baseUrl() + "/slow/list"))
                .timeout(Duration.ofMinutes(1)).build(), HttpResponse.BodyHandlers.ofInputStream()).body()) {
            assertThat(body.readAllBytes()).hasSize(LINES * LINE.length);
        }
    }

    @Test
    @Timeout(60)
    void oneWhoseBodiesDoNotComeKeepsNobodyElseWaiting() throws Exception {
        var slow = new ArrayList<Socket>();
        var filler = api.as(Role.FILLER);
        try {
            // until each place is taken: a body that meets a request which has the last one for a moment gets none
            while (filler.post("/api/fills", "{}").status() != 503) {
                slow.add(promising(api.keyOf(Role.FILLER)));
                Thread.sleep(20);
            }
            assertThat(filler.post("/api/fills", "{}").expectProblem(503, "BUSY").header("Retry-After")).isEqualTo("1");
            filler.get("/api/products?size=1").expect(200);
            api.as(Role.YARD).post("/api/fills", "{}").expectProblem(400, "INVALID_INPUT");
        } finally {
            for (var socket : slow) {
                socket.close();
            }
        }
        while (filler.post("/api/fills", "{}").status() == 503) {
            Thread.sleep(20);
        }
    }

    private Socket promising(String key) throws IOException {
        var socket = new Socket("localhost", port);
        socket.getOutputStream().write(("POST /api/fills HTTP/1.1\r\nHost: localhost\r\nAuthorization: Bearer " + key
                + "\r\nContent-Type: application/json\r\nContent-Length: 5000\r\n\r\n{")
                .getBytes(StandardCharsets.US_ASCII));
        return socket;
    }

    @Test
    void whatFailsHalfWayIsBrokenOff() {
        var request = HttpRequest.newBuilder(URI.create(api.baseUrl() + "/slow/broken")).build();
        assertThatThrownBy(() -> HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString()))
                .isInstanceOf(IOException.class);
    }
}
