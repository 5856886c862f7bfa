package org.collarbook.testing;

import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;

import org.springframework.boot.test.util.TestPropertyValues;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ApplicationListener;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.event.ContextClosedEvent;

/**
 * Which PostgreSQL the tests run on: the embedded one in a folder of this JVM's own, or with {@code -Ddatabase=container}
 * one in a container. Without an engine the latter fails; it is never skipped. The register is not walked through behind
 * a test's back.
 */
final class TestDatabase implements ApplicationContextInitializer<ConfigurableApplicationContext> {

    private static final AtomicInteger STARTED = new AtomicInteger();

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        var chosen = System.getProperty("database", "embedded");
        TestPropertyValues.of(switch (chosen) {
            case "embedded" -> Map.of("collarbook.database.folder",
                    "target/test-data/" + ProcessHandle.current().pid() + "-" + STARTED.incrementAndGet());
            case "container" -> container(context);
            default -> throw new IllegalArgumentException("-Ddatabase=" + chosen + ": expected embedded or container");
        }).and("collarbook.recompute.after=P1D").applyTo(context);
    }

    private static Map<String, String> container(ConfigurableApplicationContext context) {
        var container = ContainerDatabase.start();
        context.addApplicationListener((ApplicationListener<ContextClosedEvent>) closed -> {
            // the context is told before its pool is closed; the container goes with the JVM at the latest
            if (closed.getApplicationContext() == context) {
                Runtime.getRuntime().addShutdownHook(new Thread(container::stop));
            }
        });
        return container.properties();
    }
}
