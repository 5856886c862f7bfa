package org.collarbook.registry;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

import org.jspecify.annotations.Nullable;

/** One field in which two containers, or two states of one, differ; named as in requests. */
public record Difference(String field, @Nullable String recorded, @Nullable String given) {

    public static List<Difference> between(NewContainer recorded, NewContainer given) {
        var before = Described.fields(recorded);
        var after = Described.fields(given);
        var differences = new ArrayList<Difference>();
        before.forEach((field, was) -> {
            if (!Objects.equals(was, after.get(field))) {
                differences.add(new Difference(field, was, after.get(field)));
            }
        });
        return List.copyOf(differences);
    }
}
