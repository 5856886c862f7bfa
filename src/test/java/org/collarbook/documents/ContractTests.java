package org.collarbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;
import org.yaml.snakeyaml.DumperOptions;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/** The API document in the repository is the API that is served. */
@RegisterTest
class ContractTests {

    private static final Path DOCUMENT = Path.of("api/openapi.yaml");
    private static final Path SERVED = Path.of("target/openapi-served.yaml");

    private final Api api;

    ContractTests(Api api) {
        this.api = api;
    }

    private static Map<String, Object> read(String yaml) {
        return new Yaml(new SafeConstructor(new LoaderOptions())).load(yaml);
    }

    @Test
    void theDocumentIsWhatIsServed() throws Exception {
        var served = read(api.anonymous().get("/api-docs").expect(200).body());
        // where it happens to run now
        var options = new DumperOptions();
        options.setDefaultFlowStyle(DumperOptions.FlowStyle.BLOCK);
        options.setWidth(120);
        Files.writeString(SERVED, new Yaml(options).dump(served));
        assertThat(read(Files.readString(DOCUMENT)))
                .as("%s differs from what is served; compare it with %s and take over what is meant", DOCUMENT, SERVED)
                .isEqualTo(served);
    }

    @Test
    void everyOperationSaysWhatItIsForAndHowItRefuses() {
        var paths = api.anonymous().get("/api-docs").expect(200).at("/paths");
        assertThat(paths.size()).isGreaterThan(15);
        paths.forEach(path -> path.forEach(operation -> {
            assertThat(operation.at("/summary").asString()).as(operation.toString()).isNotBlank();
            assertThat(operation.at("/tags").isEmpty()).as(operation.toString()).isFalse();
            assertThat(operation.at("/responses/4XX/content/application~1problem+json").isMissingNode())
                    .as(operation.toString()).isFalse();
        }));
    }
}
