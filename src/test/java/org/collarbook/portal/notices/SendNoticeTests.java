package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;

import org.apache.hc.client5.http.DnsResolver;
import org.apache.hc.client5.http.SystemDefaultDnsResolver;
import org.collarbook.portal.notices.Attempt.Outcome;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a request does against endpoints that mean well, badly, or nothing at all. */
class SendNoticeTests {

    private static final byte[] BODY = "{\"version\":1}".getBytes(StandardCharsets.UTF_8);
    /** The receiver's address, which takes the place of a public one. */
    private static final String HERE = "127.0.0.1";
    private static final AllowedAddresses HERE_ALONE = new AllowedAddresses("127.0.0.1/32");

    private final Receiver receiver = new Receiver();

    @AfterEach
    void close() {
        receiver.close();
    }

    /** A name server that answers otherwise each time it is asked; the last answer stays. */
    private static final class Answers implements DnsResolver {

        private final Deque<String[]> answers = new ArrayDeque<>();

        Answers(String[]... answers) {
            this.answers.addAll(List.of(answers));
        }

        @Override
        public InetAddress[] resolve(String host) {
            var answer = answers.size() > 1 ? answers.pop() : answers.getFirst();
            return Arrays.stream(answer).map(InetAddress::ofLiteral).toArray(InetAddress[]::new);
        }

        @Override
        public String resolveCanonicalHostname(String host) {
            return host;
        }
    }

    private static final Duration SOON = Duration.ofMillis(700);

    private static String[] answer(String... addresses) {
        return addresses;
    }

    private Attempt send(String url, DnsResolver names) throws IOException {
        return send(url, names, Duration.ofSeconds(20));
    }

    private Attempt send(String url, DnsResolver names, Duration deadline) throws IOException {
        var send = new SendNotice(HERE_ALONE, names, deadline);
        try {
            return send.send(URI.create(url), Map.of("webhook-id", "one"), BODY);
        } finally {
            send.destroy();
        }
    }

    private Attempt send() throws IOException {
        return send(receiver.url(), new Answers(answer(HERE)));
    }

    @Test
    void whatIsSentArrivesUnderTheNameThatWasAskedFor() throws IOException {
        var attempt = send("http://endpoint.example:" + receiver.port() + "/a?b=c", new Answers(answer(HERE)));
        assertThat(attempt.outcome()).isEqualTo(Outcome.DELIVERED);
        assertThat(attempt.httpStatus()).isEqualTo(204);
        var received = receiver.received().getFirst();
        assertThat(received.header("Host")).isEqualTo("endpoint.example:" + receiver.port());
        assertThat(received.header("Content-Type")).startsWith("application/json");
        assertThat(received.header("webhook-id")).isEqualTo("one");
        assertThat(received.body()).isEqualTo(BODY);
    }

    @Test
    void aNameThatTurnsToAPrivateAddressIsRefusedWhereItIsConnectedTo() throws IOException {
        var names = new Answers(answer(HERE), answer("10.0.0.1"), answer(HERE));
        var url = "http://endpoint.example:" + receiver.port() + "/";
        var send = new SendNotice(HERE_ALONE, names, Duration.ofSeconds(20));
        assertThat(send.send(URI.create(url), Map.of(), BODY).outcome()).isEqualTo(Outcome.DELIVERED);
        var refused = send.send(URI.create(url), Map.of(), BODY);
        assertThat(refused.outcome()).isEqualTo(Outcome.ADDRESS_REFUSED);
        assertThat(refused.error()).doesNotContain("10.0.0.1");
        assertThat(send.send(URI.create(url), Map.of(), BODY).outcome()).isEqualTo(Outcome.DELIVERED);
        assertThat(receiver.received()).hasSize(2);
        send.destroy();
    }

    @ParameterizedTest
    @ValueSource(strings = {"10.0.0.1", "127.0.0.2", "169.254.169.254", "100.64.0.1", "0.0.0.0", "224.0.0.1", "::1",
            "::ffff:127.0.0.2", "fe80::1", "fd00::1", "ff02::1", "64:ff9b::7f00:1"})
    void oneAddressThatIsNotPublicRefusesTheWholeAnswer(String address) throws IOException {
        var url = "http://endpoint.example:" + receiver.port() + "/";
        assertThat(send(url, new Answers(answer(address))).outcome()).isEqualTo(Outcome.ADDRESS_REFUSED);
        assertThat(send(url, new Answers(answer(HERE, address))).outcome()).isEqualTo(Outcome.ADDRESS_REFUSED);
        assertThat(receiver.received()).isEmpty();
    }

    /** However it is written: what the JDK makes of a literal goes the same way as a name. */
    @ParameterizedTest
    @ValueSource(strings = {"127.0.0.2", "127.2", "2130706434", "[::ffff:127.0.0.2]", "[::1]"})
    void anAddressInTheUrlIsCheckedTheSame(String host) throws IOException {
        var attempt = send("http://" + host + ":" + receiver.port() + "/",
                SystemDefaultDnsResolver.INSTANCE);
        assertThat(attempt.outcome()).isIn(Outcome.ADDRESS_REFUSED, Outcome.NOT_REACHED);
        assertThat(receiver.received()).isEmpty();
    }

    @Test
    void aNameThatIsNotKnownIsNotReached() throws IOException {
        var attempt = send("http://endpoint.example:9999/", new DnsResolver() {
            @Override
            public InetAddress[] resolve(String host) throws UnknownHostException {
                throw new UnknownHostException(host);
            }

            @Override
            public String resolveCanonicalHostname(String host) {
                return host;
            }
        });
        assertThat(attempt.outcome()).isEqualTo(Outcome.NOT_REACHED);
    }

    @Test
    void aRedirectIsNotFollowed() throws IOException {
        try (var elsewhere = new Receiver()) {
            receiver.answers((exchange, request) -> {
                exchange.getResponseHeaders().set("Location", elsewhere.url());
                exchange.sendResponseHeaders(307, -1);
            });
            var attempt = send();
            assertThat(attempt.outcome()).isEqualTo(Outcome.ANSWERED_OTHERWISE);
            assertThat(attempt.httpStatus()).isEqualTo(307);
            assertThat(elsewhere.received()).isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {400, 401, 404, 429, 500, 502, 503})
    void whatIsAnsweredOtherwiseIsSentOnceAndNoMore(int status) throws IOException {
        receiver.answers(status);
        assertThat(send()).extracting(Attempt::outcome, Attempt::httpStatus)
                .containsExactly(Outcome.ANSWERED_OTHERWISE, status);
        assertThat(receiver.received()).hasSize(1);
    }

    @Test
    void goneIsToldApart() throws IOException {
        receiver.answers(410);
        assertThat(send().outcome()).isEqualTo(Outcome.GONE);
    }

    @Test
    void oneThatHangsIsLeft() throws IOException {
        receiver.hangs();
        var attempt = send(receiver.url(), new Answers(answer(HERE)), SOON);
        assertThat(attempt.outcome()).isEqualTo(Outcome.TIMED_OUT);
        assertThat(attempt.tookMs()).isBetween(600, 60_000);
    }

    /** Each byte begins the timeout of a socket anew; the deadline does not care. */
    @Test
    void oneThatDripsIsLeft() throws IOException {
        try (var dripping = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            Thread.ofVirtual().start(() -> drip(dripping));
            var attempt = send("http://127.0.0.1:" + dripping.getLocalPort() + "/", new Answers(answer(HERE)), SOON);
            assertThat(attempt.outcome()).isEqualTo(Outcome.TIMED_OUT);
            assertThat(attempt.tookMs()).isBetween(600, 60_000);
        }
    }

    private static void drip(ServerSocket server) {
        try (var socket = server.accept()) {
            var out = socket.getOutputStream();
            out.write("HTTP/1.1 200 OK\r\nX-Long: ".getBytes(StandardCharsets.US_ASCII));
            while (true) {
                out.write('.');
                out.flush();
                Thread.sleep(50);
            }
        } catch (IOException | InterruptedException over) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void ofAnEndlessAnswerABoundIsReadAndItsStatusCounts() throws IOException {
        var sent = new AtomicLong();
        receiver.answers((exchange, request) -> {
            exchange.sendResponseHeaders(200, 0);
            var piece = new byte[1 << 16];
            while (sent.addAndGet(piece.length) < 1L << 30) {
                exchange.getResponseBody().write(piece);
            }
        });
        var attempt = send();
        assertThat(attempt.outcome()).isEqualTo(Outcome.DELIVERED);
        assertThat(sent.get()).isLessThan(1L << 28);
    }

    @Test
    void whereNobodyListensIsNotReached() throws IOException {
        // bound, so that nobody else comes to listen there meanwhile
        try (var silent = new Socket()) {
            silent.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0));
            var attempt = send("http://127.0.0.1:" + silent.getLocalPort() + "/", new Answers(answer(HERE)));
            assertThat(attempt.outcome()).isEqualTo(Outcome.NOT_REACHED);
            assertThat(attempt.error()).isNotBlank();
        }
    }
}
