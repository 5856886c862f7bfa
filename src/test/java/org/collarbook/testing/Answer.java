package org.collarbook.testing;

import java.net.http.HttpHeaders;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the service answered. */
public record Answer(int status, HttpHeaders headers, byte[] bytes, JsonMapper mapper) {

    /** Fails with the whole answer when the status is another. */
    public Answer expect(int expected) {
        if (status != expected) {
            throw new AssertionError("expected status " + expected + ", got " + this);
        }
        return this;
    }

    /** A problem answer with this status and code. */
    public Answer expectProblem(int expected, String code) {
        expect(expected);
        if (!contentType().startsWith("application/problem+json") || !text("/code").equals(code)) {
            throw new AssertionError("expected problem " + code + ", got " + this);
        }
        return this;
    }

    public String body() {
        return new String(bytes, StandardCharsets.UTF_8);
    }

    public JsonNode json() {
        return mapper.readTree(bytes);
    }

    public JsonNode at(String pointer) {
        return json().at(pointer);
    }

    public String text(String pointer) {
        return at(pointer).asString();
    }

    public String id() {
        return text("/id");
    }

    public String header(String name) {
        return headers.firstValue(name).orElse("");
    }

    public String etag() {
        return header("ETag");
    }

    public String contentType() {
        return header("Content-Type");
    }

    /** The inputs at fault: pointer and code. */
    public Map<String, String> errors() {
        var errors = new TreeMap<String, String>();
        at("/errors").forEach(error -> errors.put(error.at("/pointer").asString(), error.at("/code").asString()));
        return errors;
    }

    @Override
    public String toString() {
        return status + " " + contentType() + "\n" + body();
    }
}
