package org.collarbook.intake;

import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;

import org.collarbook.registry.Declaration;
import org.collarbook.registry.Declarations;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What the register has of the declarations that the rows of a batch name. */
@Component
class KnownDeclarations {

    /** Which said the same, by their words without an id; {@code withdrawn} are mistakes as far as is known. */
    record Found(Map<Declaration, UUID> ids, Collection<Declaration> withdrawn) {

        static final Found NONE = new Found(Map.of(), Set.of());

        /** The same words of the same person and day were taken back. */
        boolean areWithdrawn(Declaration said) {
            return withdrawn.stream().anyMatch(other -> other.declaredBy().equals(said.declaredBy())
                    && other.declaredOn().equals(said.declaredOn()) && other.statement().equals(said.statement()));
        }
    }

    private final JdbcClient jdbc;

    KnownDeclarations(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Found of(Collection<Declaration> said) {
        if (said.isEmpty()) {
            return Found.NONE;
        }
        var ids = new HashMap<Declaration, UUID>();
        var withdrawn = new HashSet<Declaration>();
        jdbc.sql("""
                select d.*, exists (select from declaration_withdrawal w where w.declaration_id = d.id) as withdrawn
                from declaration d where declared_by = any (?) and declared_on = any (?::date[]) order by d.id""")
                .params(said.stream().map(Declaration::declaredBy).distinct().toArray(String[]::new),
                        said.stream().map(Declaration::declaredOn).distinct().map(LocalDate::toString)
                                .toArray(String[]::new))
                .query(row -> {
                    var found = Declarations.read(row, 0);
                    if (row.getBoolean("withdrawn")) {
                        withdrawn.add(found);
                    } else {
                        ids.putIfAbsent(found.as(RowDeclaration.NO_ID), found.id());
                    }
                });
        return new Found(ids, withdrawn);
    }

    /** Whose rules govern by the declarations that containers were registered under. */
    Map<UUID, String> jurisdictions(Collection<@Nullable UUID> declarations) {
        var found = new HashMap<UUID, String>();
        jdbc.sql("select id, jurisdiction from declaration where id = any (?) and jurisdiction is not null")
                .param(declarations.stream().filter(Objects::nonNull).distinct().toArray(UUID[]::new)).query(row -> {
                    found.put(row.getObject(1, UUID.class), row.getString(2));
                });
        return found;
    }
}
