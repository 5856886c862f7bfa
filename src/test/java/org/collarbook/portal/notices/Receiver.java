package org.collarbook.portal.notices;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A customer's endpoint on this machine: it keeps what it received and answers as it is told. */
final class Receiver implements AutoCloseable {

    private static final JsonMapper JSON = new JsonMapper();

    /** One request. */
    record Received(Map<String, List<String>> headers, byte[] body) {

        String header(String name) {
            return headers.entrySet().stream().filter(entry -> entry.getKey().equalsIgnoreCase(name))
                    .map(entry -> entry.getValue().getFirst()).findFirst().orElse("");
        }

        String text() {
            return new String(body, StandardCharsets.UTF_8);
        }

        JsonNode json() {
            return JSON.readTree(body);
        }

        String type() {
            return json().at("/type").asString();
        }

        String container() {
            return json().at("/container/id").asString();
        }
    }

    /** How it answers. */
    interface Answering {
        void answer(HttpExchange exchange, Received received) throws IOException;
    }

    private final HttpServer server;
    private final ExecutorService threads = Executors.newCachedThreadPool();
    private final CountDownLatch closing = new CountDownLatch(1);
    private final List<Received> received = new CopyOnWriteArrayList<>();
    private volatile Answering answering = (exchange, request) -> exchange.sendResponseHeaders(204, -1);

    Receiver() {
        try {
            server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        server.createContext("/", this::take);
        server.setExecutor(threads);
        server.start();
    }

    private void take(HttpExchange exchange) throws IOException {
        try (exchange) {
            var request = new Received(Map.copyOf(exchange.getRequestHeaders()),
                    exchange.getRequestBody().readAllBytes());
            received.add(request);
            answering.answer(exchange, request);
        }
    }

    int port() {
        return server.getAddress().getPort();
    }

    String url() {
        return "http://127.0.0.1:" + port() + "/notices";
    }

    void answers(int status) {
        answering = (exchange, request) -> exchange.sendResponseHeaders(status, -1);
    }

    void answers(Answering how) {
        answering = how;
    }

    /** It takes the request and never answers. */
    void hangs() {
        answering = (exchange, request) -> {
            try {
                closing.await();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        };
    }

    List<Received> received() {
        return List.copyOf(received);
    }

    List<String> types() {
        return received.stream().map(Received::type).toList();
    }

    void forget() {
        received.clear();
    }

    @Override
    public void close() {
        closing.countDown();
        server.stop(0);
        threads.shutdownNow();
    }
}
