package org.collarbook.lifecycle;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** From the command to the first healthy answer, of the packaged jar. {@code mvn -Pbench verify} */
@Tag("bench")
class StartBenchmarkIT {

    private static final int RUNS = 5;

    @TempDir
    private Path folder;

    @Test
    void start() throws Exception {
        double first = seconds();
        double[] warm = new double[RUNS];
        for (int i = 0; i < RUNS; i++) {
            warm[i] = seconds();
        }
        Arrays.sort(warm);
        System.out.printf(Locale.ROOT,
                "bench start of the jar: %.1f s on an empty folder, %.1f s on its data (median of %d)%n",
                first, warm[RUNS / 2], RUNS);
    }

    private double seconds() throws Exception {
        long before = System.nanoTime();
        try (var running = RunningJar.start(folder).awaitUp()) {
            if (running.get("/actuator/health", "").statusCode() != 200) {
                throw new AssertionError("not healthy");
            }
            return (System.nanoTime() - before) / 1e9;
        }
    }
}
