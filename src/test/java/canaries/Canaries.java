package canaries;

import java.time.Instant;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.ApplicationContext;
import org.springframework.web.bind.annotation.RestController;

/** Classes that break one code rule each; outside the product's package, so that nothing scans them. */
public final class Canaries {

    private Canaries() {}

    public static class ReadsTheSystemClock {

        Instant time() {
            return Instant.now();
        }
    }

    @Entity
    public static class PublicEntity {

        @Id
        private @Nullable Long id;

        @Nullable
        Long id() {
            return id;
        }
    }

    @RestController
    public static class PublicController {}

    public static class FieldInjection {

        @Autowired
        private @Nullable ApplicationContext context;

        @Nullable
        ApplicationContext context() {
            return context;
        }
    }

    public static class OpenField {

        int counter;
    }
}
