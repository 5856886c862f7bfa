package org.collarbook.testing;

import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;

import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ApplicationListener;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.event.ContextClosedEvent;

/**
 * Which PostgreSQL the tests run on: the embedded one in a folder of this JVM's own, or with {@code -Ddatabase=container}
 * one in a container. Without an engine the latter fails; it is never skipped. The register is not walked through, nor a
 * notice sent, behind a test's back; notices may go to this machine.
 */
final class TestDatabase implements ApplicationContextInitializer<ConfigurableApplicationContext> {

    private static final AtomicInteger STARTED = new AtomicInteger();

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        TestPropertyValues.of(chosen(container -> stopWith(context, container)))
                .and("collarbook.recompute.after=P1D", "collarbook.notices.allow-http=true",
                        "collarbook.notices.allow-addresses=127.0.0.0/8")
                .applyTo(context);
    }

    static Map<String, String> chosen(Consumer<ContainerDatabase> started) {
        var chosen = System.getProperty("database", "embedded");
        return switch (chosen) {
            case "embedded" -> Map.of("collarbook.database.folder",
                    "target/test-data/" + ProcessHandle.current().pid() + "-" + STARTED.incrementAndGet());
            case "container" -> {
                var container = ContainerDatabase.start();
                started.accept(container);
                yield container.properties();
            }
            default -> throw new IllegalArgumentException("-Ddatabase=" + chosen + ": expected embedded or container");
        };
    }

    private static void stopWith(ConfigurableApplicationContext context, ContainerDatabase container) {
        context.addApplicationListener((ApplicationListener<ContextClosedEvent>) closed -> {
            // the context is told before its pool is closed; the container goes with the JVM at the latest
            if (closed.getApplicationContext() == context) {
                Runtime.getRuntime().addShutdownHook(new Thread(container::stop));
            }
        });
    }
}
