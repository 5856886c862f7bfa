package org.collarbook.portal;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Which fields of a container are asked for; all where {@code names} is null. */
record Fields(@Nullable Set<String> names) {

    private static final List<String> KNOWN = Arrays.stream(PortalContainer.class.getRecordComponents())
            .map(component -> component.getName()).toList();

    static @Nullable Fields read(@Nullable String given, Inputs wrong) {
        if (given == null || given.isBlank()) {
            return new Fields(null);
        }
        var names = new LinkedHashSet<>(Set.of("id"));
        boolean known = true;
        for (var name : given.split(",")) {
            if (KNOWN.contains(name.strip())) {
                names.add(name.strip());
            } else {
                known = false;
                wrong.refuse("fields", "UNKNOWN_FIELD", name, "some of " + String.join(", ", KNOWN));
            }
        }
        return known ? new Fields(names) : null;
    }

    JsonNode of(PortalContainer container, JsonMapper json) {
        var whole = json.valueToTree(container);
        return names == null || !(whole instanceof ObjectNode fields) ? whole : fields.retain(names);
    }
}
