package org.collarbook.intake;

import java.io.IOException;

import org.collarbook.platform.Problem;
import org.jspecify.annotations.Nullable;
import org.springframework.http.converter.HttpMessageNotReadableException;
import org.springframework.http.server.ServletServerHttpRequest;
import org.springframework.stereotype.Component;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.Part;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** Reads the part that holds a declaration as JSON, whatever type the sender's tool gave the part. */
@Component
class DeclarationPart {

    private static final long LONGEST = 64 * 1024;

    private final JsonMapper json;
    private final HttpServletRequest request;

    DeclarationPart(JsonMapper json, HttpServletRequest request) {
        this.json = json;
        this.request = request;
    }

    @Nullable
    DeclarationRequest read(@Nullable Part part) throws IOException {
        if (part == null) {
            return null;
        }
        if (part.getSize() > LONGEST) {
            throw Problem.invalid("/declaration", "OUT_OF_RANGE", part.getSize() + " bytes",
                    "a declaration of at most " + LONGEST + " bytes").asException();
        }
        try (var content = part.getInputStream()) {
            return json.readValue(content.readAllBytes(), DeclarationRequest.class);
        } catch (JacksonException malformed) {
            throw new HttpMessageNotReadableException("the declaration cannot be read", malformed,
                    new ServletServerHttpRequest(request));
        }
    }
}
