package org.collarbook.registry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** How a row of the table is read. */
final class ContainerRows {

    static final String SELECT = "select id, version, " + MarkColumns.NAMES + ", " + ParticularColumns.NAMES
            + ", tag, declaration_id, declared, registered_at from container c ";

    private ContainerRows() {}

    static RegisteredContainer read(ResultSet row, int number) throws SQLException {
        var marks = MarkColumns.read(row);
        var tag = row.getString("tag");
        return new RegisteredContainer(row.getObject("id", UUID.class), row.getInt("version"), marks,
                ParticularColumns.read(row), new Size(row.getString("size")), tag == null ? null : new Tag(tag),
                row.getObject("declaration_id", UUID.class), facts((String[]) row.getArray("declared").getArray()),
                row.getObject("registered_at", OffsetDateTime.class).toInstant());
    }

    private static Set<DeclarableFact> facts(String[] words) {
        return Arrays.stream(words).map(DeclarableFact::of).collect(Collectors.toUnmodifiableSet());
    }

    static String[] words(Set<DeclarableFact> declared) {
        return declared.stream().sorted().map(DeclarableFact::word).toArray(String[]::new);
    }
}
