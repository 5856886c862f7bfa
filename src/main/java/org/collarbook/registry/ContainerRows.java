package org.collarbook.registry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.StoredMoment;
import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;

/** How a row of the table is read; for statements of other modules too that join the table to their own. */
public final class ContainerRows {

    private static final String NAMES = "id, version, " + MarkColumns.NAMES + ", " + ParticularColumns.NAMES
            + ", tag, declaration_id, declared, declared_in, declared_jurisdiction, registered_at";

    /** The columns that {@link #read} reads, of the table under the alias {@code c}. */
    public static final String COLUMNS = NAMES.replaceAll("(\\w+)", "c.$1");

    static final String SELECT = "select " + COLUMNS + " from container c ";

    private ContainerRows() {}

    public static RegisteredContainer read(ResultSet row, int number) throws SQLException {
        var marks = MarkColumns.read(row);
        var tag = row.getString("tag");
        return new RegisteredContainer(row.getObject("id", UUID.class), row.getInt("version"), marks,
                ParticularColumns.read(row), new Size(row.getString("size")), tag == null ? null : new Tag(tag),
                row.getObject("declaration_id", UUID.class), facts((String[]) row.getArray("declared").getArray()),
                further(row),
                StoredMoment.of(row, "registered_at"));
    }

    private static Further further(ResultSet row) throws SQLException {
        var by = row.getArray("declared_in");
        if (by == null) {
            return Further.NONE;
        }
        var facts = (String[]) row.getArray("declared").getArray();
        var declarations = (UUID[]) by.getArray();
        var own = row.getObject("declaration_id", UUID.class);
        var further = new HashMap<DeclarableFact, UUID>();
        for (int i = 0; i < facts.length; i++) {
            if (!declarations[i].equals(own)) {
                further.put(DeclarableFact.of(facts[i]), declarations[i]);
            }
        }
        var jurisdiction = row.getString("declared_jurisdiction");
        return new Further(further, jurisdiction == null ? null : new Jurisdiction(jurisdiction));
    }

    private static Set<DeclarableFact> facts(String[] words) {
        return Arrays.stream(words).map(DeclarableFact::of).collect(Collectors.toUnmodifiableSet());
    }

    /** Beside each of the {@link #words}, the declaration that it rests on; null when all rest on the one. */
    static UUID @Nullable [] declarations(NewContainer content) {
        var further = content.further().declared();
        return further.isEmpty()
                ? null
                : content.declared().stream().sorted()
                        .map(fact -> further.getOrDefault(fact, content.declaration())).toArray(UUID[]::new);
    }

    static @Nullable String jurisdiction(NewContainer content) {
        var jurisdiction = content.further().jurisdiction();
        return jurisdiction == null ? null : jurisdiction.code();
    }

    static String[] words(Set<DeclarableFact> declared) {
        return declared.stream().sorted().map(DeclarableFact::word).toArray(String[]::new);
    }
}
