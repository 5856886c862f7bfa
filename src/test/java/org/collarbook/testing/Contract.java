package org.collarbook.testing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.dialect.Dialects;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * Holds every answer that a test gets against {@code api/openapi.yaml}: its status, its media type, and each JSON body by
 * its schema (JSON Schema 2020-12 in the dialect of OpenAPI 3.1, by a library). A property that is not in the document is a
 * fault too, but in a problem, which may have members of its own (RFC 9457, 3.2).
 */
public final class Contract {

    private static final String IRI = "urn:collarbook:api";
    private static final Contract DOCUMENT = new Contract();

    private record Documented(Pattern pattern, String template, JsonNode item) {}

    private final List<Documented> paths;
    private final JsonNode schemas;
    private final Schema whole;
    private final Map<String, Schema> compiled = new ConcurrentHashMap<>();

    private Contract() {
        var mapper = JsonMapper.builder().build();
        JsonNode document;
        try {
            document = mapper.valueToTree(new Yaml(new SafeConstructor(new LoaderOptions()))
                    .<Map<String, Object>>load(Files.readString(Path.of("api/openapi.yaml"))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        schemas = document.at("/components/schemas");
        schemas.properties().stream().filter(one -> !one.getKey().equals("Problem"))
                .forEach(one -> close(one.getValue()));
        // the literal steps before the variable ones, as the server chooses
        paths = document.at("/paths").properties().stream()
                .map(path -> new Documented(pattern(path.getKey()), path.getKey(), path.getValue()))
                .sorted(Comparator.comparing((Documented path) -> path.template.contains("{"))
                        .thenComparing(Documented::template))
                .toList();
        whole = SchemaRegistry.withDialect(Dialects.getOpenApi31(),
                builder -> builder.schemas(Map.of(IRI, mapper.writeValueAsString(document))))
                .getSchema(SchemaLocation.of(IRI));
    }

    /** What is not told of an object may not be in it. */
    private static void close(JsonNode schema) {
        if (schema instanceof ObjectNode object && object.has("properties") && !object.has("additionalProperties")) {
            object.put("additionalProperties", false);
            object.get("properties").forEach(Contract::close);
        }
    }

    private static Pattern pattern(String template) {
        return Pattern.compile(template.replace(".", "\\.").replaceAll("\\{[^}]+}", "[^/]+"));
    }

    /** Each operation by the JSON pointer to it. */
    public static Map<String, JsonNode> operations() {
        var found = new LinkedHashMap<String, JsonNode>();
        DOCUMENT.paths.forEach(path -> path.item.properties().stream().filter(one -> one.getValue().has("operationId"))
                .forEach(one -> found.put(pointer(path, one.getKey()), one.getValue())));
        return found;
    }

    public static JsonNode schema(String name) {
        return DOCUMENT.schemas.get(name);
    }

    private static String pointer(Documented path, String method) {
        return "/paths/" + path.template.replace("~", "~0").replace("/", "~1") + "/" + method;
    }

    /** What is wrong with a value by the schema at the pointer. */
    public static List<String> faults(String pointer, JsonNode value) {
        return DOCUMENT.compiled.computeIfAbsent(pointer,
                at -> DOCUMENT.whole.getSubSchema(SchemaLocation.Fragment.of(at))).validate(value).stream().limit(5)
                .map(Object::toString).toList();
    }

    /** With {@code fields} a portal asks for some properties only, which no schema tells. */
    static void check(String method, String pathAndQuery, Answer answer) {
        if (!pathAndQuery.contains("fields=")) {
            DOCUMENT.checkAnswer(method, pathAndQuery.replaceFirst("\\?.*", ""), answer);
        }
    }

    private void checkAnswer(String method, String path, Answer answer) {
        var verb = method.toLowerCase(Locale.ROOT);
        var operation = paths.stream().filter(one -> one.pattern.matcher(path).matches())
                .filter(one -> one.item.has(verb)).findFirst();
        if (operation.isEmpty() || method.equals("HEAD")) {
            return;
        }
        var responses = operation.get().item.get(verb).get("responses");
        var status = responses.has(String.valueOf(answer.status()))
                ? String.valueOf(answer.status())
                : answer.status() / 100 + "XX";
        var response = responses.get(status);
        if (response == null) {
            throw fault(method, path, answer, "the status is not in the document");
        }
        var media = answer.contentType().replaceFirst(";.*", "").strip();
        if (answer.bytes().length == 0) {
            return;
        }
        if (!response.has("content") || !response.get("content").has(media)) {
            throw fault(method, path, answer, "the media type is not in the document for this status");
        }
        if (media.endsWith("json") && response.get("content").get(media).has("schema")) {
            var wrong = faults(pointer(operation.get(), verb) + "/responses/" + status + "/content/"
                    + media.replace("/", "~1") + "/schema", answer.json());
            if (!wrong.isEmpty()) {
                throw fault(method, path, answer, String.join("; ", wrong));
            }
        }
    }

    private static AssertionError fault(String method, String path, Answer answer, String why) {
        return new AssertionError(method + " " + path + " is not answered as api/openapi.yaml says: " + why + "\n"
                + answer);
    }
}
