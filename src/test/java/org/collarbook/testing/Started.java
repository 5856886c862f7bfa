package org.collarbook.testing;

import java.util.HashMap;
import java.util.Map;

import org.collarbook.Collarbook;
import org.springframework.boot.builder.SpringApplicationBuilder;
import org.springframework.context.ConfigurableApplicationContext;

/** The whole service as one test starts and stops it, more than once on the same database. */
public final class Started implements AutoCloseable {

    private final ConfigurableApplicationContext context;

    private Started(ConfigurableApplicationContext context) {
        this.context = context;
    }

    /** The database that {@code -Ddatabase} chooses, for one test's own services. */
    public static Map<String, String> database() {
        return TestDatabase.chosen(container -> {
            // it goes with the JVM
            Runtime.getRuntime().addShutdownHook(new Thread(container::stop));
        });
    }

    public static Started on(Map<String, String> database, Map<String, String> more) {
        var properties = new HashMap<>(database);
        properties.put("server.port", "0");
        properties.put("collarbook.recompute.after", "P1D");
        properties.putAll(more);
        // as arguments, which go before the service's own settings
        return new Started(new SpringApplicationBuilder(Collarbook.class, TestClock.Configuration.class, Api.class,
                Given.class).run(
                        properties.entrySet().stream()
                                .map(property -> "--" + property.getKey() + "=" + property.getValue())
                                .toArray(String[]::new)));
    }

    public <T> T get(Class<T> bean) {
        return context.getBean(bean);
    }

    @Override
    public void close() {
        context.close();
    }
}
