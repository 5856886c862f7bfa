package org.collarbook.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicLong;

/** Counts the answers of the service by status over a whole run, into {@code target/answers.txt}. */
final class RefusedRequests {

    private static final ConcurrentSkipListMap<Integer, AtomicLong> ANSWERS = new ConcurrentSkipListMap<>();

    static {
        Runtime.getRuntime().addShutdownHook(new Thread(RefusedRequests::write));
    }

    private RefusedRequests() {}

    static void count(int status) {
        ANSWERS.computeIfAbsent(status, any -> new AtomicLong()).incrementAndGet();
    }

    private static void write() {
        long refused = ANSWERS.tailMap(400).values().stream().mapToLong(AtomicLong::get).sum();
        try {
            Files.writeString(Path.of("target", "answers.txt"), refused + " requests refused; by status " + ANSWERS
                    + System.lineSeparator());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
