package org.collarbook.documents;

import java.util.ArrayList;
import java.util.List;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Compares what a document shows with what was answered. Of JSON, members and later elements may be left out and a text
 * that ends in "…" stands for any that begins so; of other text, as many lines as are shown.
 */
final class Shown {

    private static final JsonMapper JSON = JsonMapper.builder().build();

    private final List<String> differences = new ArrayList<>();

    private Shown() {}

    static List<String> differences(String shown, String answered) {
        var comparison = new Shown();
        if (shown.startsWith("{")) {
            comparison.compare("", JSON.readTree(shown), JSON.readTree(answered));
        } else {
            comparison.lines(shown, answered);
        }
        return comparison.differences;
    }

    private void lines(String shown, String answered) {
        var given = answered.lines().toList();
        var expected = shown.lines().toList();
        for (int i = 0; i < expected.size(); i++) {
            if (i >= given.size() || !matches(expected.get(i), given.get(i))) {
                differences.add("line " + (i + 1) + " is " + (i < given.size() ? given.get(i) : "not there"));
            }
        }
    }

    private static boolean matches(String shown, String given) {
        return shown.endsWith("…") ? given.startsWith(shown.substring(0, shown.length() - 1)) : given.equals(shown);
    }

    private void compare(String at, JsonNode shown, JsonNode given) {
        if (shown.isObject()) {
            shown.propertyNames().forEach(name -> compare(at + "/" + name, shown.get(name), given.path(name)));
        } else if (shown.isArray()) {
            for (int i = 0; i < shown.size(); i++) {
                compare(at + "/" + i, shown.get(i), given.path(i));
            }
        } else if (shown.isString() && given.isString()
                ? !matches(shown.asString(), given.asString())
                : !shown.equals(given) && !shown.toString().equals(given.toString())) {
            differences.add(at + " is " + given);
        }
    }
}
