package org.collarbook.platform;

import java.time.Instant;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * One recorded fact of a container as its chain keeps it. {@code subject} is the row of the fact; {@code content} is what
 * it says, without what is not known, so that a column added later does not change what was entered before.
 */
public record JournalFact(UUID container, String kind, UUID subject, Instant occurredAt, Instant recordedAt,
        UUID recordedBy, TreeMap<String, String> content) {

    /** A row that changes is a fact once a version; its table tells the last of them. */
    public static final String FIRST_VERSION = "REGISTERED";
    public static final String LATER_VERSION = "RECORDED_ANEW";

    static boolean isVersion(String kind) {
        return kind.equals(FIRST_VERSION) || kind.equals(LATER_VERSION);
    }

    /** The content of a fact from its fields; what is null is left out. */
    public static TreeMap<String, String> content(Map<String, ? extends @Nullable Object> fields) {
        var content = new TreeMap<String, String>();
        fields.forEach((name, value) -> {
            if (value != null) {
                content.put(name, value.toString());
            }
        });
        return content;
    }
}
