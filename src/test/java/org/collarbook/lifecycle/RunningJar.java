package org.collarbook.lifecycle;

import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;

/** The packaged service as its users run it: a process of its own, in a folder of its own. */
public final class RunningJar implements AutoCloseable {

    private static final Pattern KEY = Pattern.compile("(?m)^(cb_[A-Za-z0-9_-]{43})$");
    private static final HttpClient HTTP = HttpClient.newHttpClient();
    private static final Duration PATIENCE = Duration.ofMinutes(4);

    private final Process process;
    private final int port;
    private final Path output;

    private RunningJar(Process process, int port, Path output) {
        this.process = process;
        this.port = port;
        this.output = output;
    }

    public static RunningJar start(Path folder, String... arguments) throws IOException {
        int port = freePort();
        var output = Files.createTempFile(folder, "output", ".log");
        var command = new ArrayList<>(List.of(ProcessHandle.current().info().command().orElse("java"), "-Xmx256m",
                "-jar",
                Path.of(System.getProperty("collarbook.jar")).toAbsolutePath().toString(), "--server.port=" + port));
        command.addAll(List.of(arguments));
        var process = new ProcessBuilder(command).directory(folder.toFile()).redirectErrorStream(true)
                .redirectOutput(output.toFile()).start();
        return new RunningJar(process, port, output);
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    public RunningJar awaitUp() throws Exception {
        for (long end = System.nanoTime() + PATIENCE.toNanos(); System.nanoTime() < end; Thread.sleep(100)) {
            if (!process.isAlive()) {
                throw new AssertionError("the service stopped:\n" + output());
            }
            try {
                if (get("/actuator/health", "").statusCode() == 200) {
                    return this;
                }
            } catch (IOException notYet) {
                // it is still starting
            }
        }
        throw new AssertionError("the service did not come up:\n" + output());
    }

    /** Waits for a start that is meant to fail. */
    int awaitExit() throws InterruptedException {
        if (!process.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
            throw new AssertionError("the service is still running");
        }
        return process.exitValue();
    }

    public HttpResponse<String> get(String path, String key) throws IOException, InterruptedException {
        return send(request(path, key).GET());
    }

    public HttpResponse<String> post(String path, String key, String json) throws IOException, InterruptedException {
        return send(request(path, key).header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(json)));
    }

    HttpResponse<String> postOnce(String path, String key, String idempotencyKey, String json)
            throws IOException, InterruptedException {
        return send(request(path, key).header("Content-Type", "application/json")
                .header("Idempotency-Key", idempotencyKey).timeout(Duration.ofMinutes(5))
                .POST(HttpRequest.BodyPublishers.ofString(json)));
    }

    public HttpResponse<String> post(String path, String key, Map<String, String> headers, String body)
            throws IOException, InterruptedException {
        var request = request(path, key).POST(HttpRequest.BodyPublishers.ofString(body));
        headers.forEach(request::header);
        return send(request);
    }

    private HttpRequest.Builder request(String path, String key) {
        return HttpRequest.newBuilder(URI.create("http://localhost:" + port + path))
                .header("Authorization", "Bearer " + key).timeout(Duration.ofMinutes(2));
    }

    private static HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        return HTTP.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    String output() throws IOException {
        return Files.readString(output);
    }

    /** The key printed on the first start, if one was. */
    public Optional<String> printedKey() throws IOException {
        var line = KEY.matcher(output());
        return line.find() ? Optional.of(line.group(1)) : Optional.empty();
    }

    /** As {@code kill -9}: the service gets no chance to stop its database. */
    public void kill() throws InterruptedException {
        process.destroyForcibly();
        process.waitFor(30, TimeUnit.SECONDS);
    }

    /** As {@code kill -STOP}: it stands still, and knows nothing of it, until it is told to go on. */
    public void standStill() throws IOException, InterruptedException {
        signal("-STOP");
    }

    public void goOn() throws IOException, InterruptedException {
        signal("-CONT");
    }

    private void signal(String signal) throws IOException, InterruptedException {
        var sent = new ProcessBuilder("kill", signal, String.valueOf(process.pid())).start();
        if (sent.waitFor() != 0) {
            throw new IllegalStateException("kill " + signal + " failed");
        }
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(60, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}
