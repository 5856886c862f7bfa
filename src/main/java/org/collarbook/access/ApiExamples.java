package org.collarbook.access;

import java.io.IOException;
import java.io.UncheckedIOException;

import org.jspecify.annotations.Nullable;
import org.springframework.core.io.ClassPathResource;

import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.Content;
import tools.jackson.databind.json.JsonMapper;

/** The examples of {@code api/examples}: what is sent and what is answered, in a file for each operation by its id. */
final class ApiExamples {

    private static final String JSON = "application/json";

    private record Example(@Nullable Object request, @Nullable Object response) {}

    private final JsonMapper json = JsonMapper.builder().build();

    void add(Operation operation) {
        var example = read(operation.getOperationId());
        if (example == null) {
            return;
        }
        if (example.request != null) {
            put(operation.getRequestBody().getContent(), example.request);
        }
        if (example.response != null) {
            operation.getResponses().forEach((status, answer) -> {
                if (status.startsWith("2")) {
                    put(answer.getContent(), example.response);
                }
            });
        }
    }

    /** How a refusal looks. */
    @Nullable
    Object problem() {
        var example = read("Problem");
        return example == null ? null : example.response;
    }

    private @Nullable Example read(String name) {
        var file = new ClassPathResource("api-examples/" + name + ".json");
        if (!file.exists()) {
            return null;
        }
        try (var in = file.getInputStream()) {
            return json.readValue(in, Example.class);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void put(@Nullable Content content, Object example) {
        var media = content == null ? null : content.get(JSON);
        if (media != null) {
            media.setExample(example);
        }
    }
}
