package org.collarbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.TreeSet;
import java.util.stream.Collectors;

import org.collarbook.testing.Contract;
import org.junit.jupiter.api.Test;

import tools.jackson.databind.JsonNode;

/** Every operation of {@code api/openapi.yaml} has an example of what is sent and answered, and each is as its schema says. */
class ExamplesTests {

    private static final String JSON = "/content/application~1json";

    private static void check(JsonNode at, String pointer, String name, ArrayList<String> wrong) {
        var media = at.at(JSON);
        if (media.isMissingNode()) {
            return;
        }
        if (!media.has("example")) {
            wrong.add(name + " has no example");
        } else {
            Contract.faults(pointer + JSON + "/schema", media.get("example"))
                    .forEach(fault -> wrong.add(name + ": " + fault));
        }
    }

    @Test
    void eachIsThereAndFitsItsSchema() {
        var wrong = new ArrayList<String>();
        Contract.operations().forEach((pointer, operation) -> {
            var id = operation.at("/operationId").asString();
            check(operation.path("requestBody"), pointer + "/requestBody", id + " request", wrong);
            operation.path("responses").properties().stream().filter(answer -> answer.getKey().startsWith("2"))
                    .forEach(answer -> check(answer.getValue(), pointer + "/responses/" + answer.getKey(),
                            id + " " + answer.getKey(), wrong));
        });
        assertThat(wrong).isEmpty();
    }

    @Test
    void theOneOfARefusalFitsIt() {
        var problem = Contract.schema("Problem");
        assertThat(Contract.faults("/components/schemas/Problem", problem.get("example"))).isEmpty();
        assertThat(problem.at("/example/errors/0/pointer").asString()).startsWith("/");
    }

    @Test
    void eachFileIsOfAnOperation() throws IOException {
        var ids = Contract.operations().values().stream()
                .map(operation -> operation.at("/operationId").asString() + ".json")
                .collect(Collectors.toCollection(TreeSet::new));
        ids.add("Problem.json");
        try (var files = Files.list(Path.of("api/examples"))) {
            assertThat(files.map(file -> file.getFileName().toString())).isNotEmpty().isSubsetOf(ids);
        }
    }
}
