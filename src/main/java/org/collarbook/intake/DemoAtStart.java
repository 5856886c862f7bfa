package org.collarbook.intake;

import java.util.Objects;
import java.util.UUID;

import org.collarbook.platform.ProblemException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.ApplicationArguments;
import org.springframework.boot.ApplicationRunner;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.stereotype.Component;

/** Loads the demo at start when {@code collarbook.demo=true}; on a register that is not empty it says so and goes on. */
@Component
@ConditionalOnProperty(name = "collarbook.demo", havingValue = "true")
class DemoAtStart implements ApplicationRunner {

    private static final Logger log = LoggerFactory.getLogger(DemoAtStart.class);
    /** Nobody's key: the service itself. */
    private static final UUID THE_SERVICE = new UUID(0, 0);

    private final Demo demo;

    DemoAtStart(Demo demo) {
        this.demo = demo;
    }

    @Override
    public void run(ApplicationArguments arguments) {
        try {
            var rows = Objects.requireNonNull(demo.load(THE_SERVICE).rows());
            log.info("The demo is loaded: {} invented rows, {} of them not taken on purpose", rows.read(),
                    rows.notTaken());
        } catch (ProblemException refused) {
            log.warn("The demo was not loaded. {}", refused.problem().detail());
        }
    }
}
