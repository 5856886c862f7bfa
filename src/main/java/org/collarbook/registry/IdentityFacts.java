package org.collarbook.registry;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.JournalFact;
import org.collarbook.platform.Journalled;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Merges, splits and what undid them, in the chains of both records: an entry of each says what it was to that one. */
@Component
class IdentityFacts implements Journalled {

    private static final String ACTS = """
            select case a.kind when 'MERGE' then 'ABSORBED' else 'SPLIT_OFF' end as into_kind,
              case a.kind when 'MERGE' then 'MERGED' else 'SPLIT' end as from_kind,
              a.id, a.from_id, a.into_id, a.set_aside, a.confirmed, a.undoes, a.reason, a.recorded_at, a.recorded_by
            from identity_act a where a.from_id = any (:ids) or a.into_id = any (:ids)
            union all
            select case a.kind when 'MERGE' then 'ABSORBED_UNDONE' else 'SPLIT_OFF_UNDONE' end,
              case a.kind when 'MERGE' then 'MERGED_UNDONE' else 'SPLIT_UNDONE' end,
              a.id, a.from_id, a.into_id, '{}', u.confirmed, null, u.reason, u.recorded_at, u.recorded_by
            from identity_act_undo u join identity_act a on a.id = u.act_id
            where a.from_id = any (:ids) or a.into_id = any (:ids)""";

    private final JdbcClient jdbc;

    IdentityFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<JournalFact> of(Collection<UUID> containers) {
        return jdbc.sql(ACTS).param("ids", containers.toArray(UUID[]::new)).query(IdentityFacts::both).list().stream()
                .flatMap(List::stream).filter(fact -> containers.contains(fact.container())).toList();
    }

    private static List<JournalFact> both(ResultSet row, int number) throws SQLException {
        var from = row.getObject("from_id", UUID.class);
        var into = row.getObject("into_id", UUID.class);
        return List.of(fact(row, from, row.getString("from_kind"), into),
                fact(row, into, row.getString("into_kind"), from));
    }

    private static JournalFact fact(ResultSet row, UUID container, String kind, UUID other) throws SQLException {
        var fields = new HashMap<String, @Nullable Object>();
        fields.put("other", other);
        fields.put("reason", row.getString("reason"));
        fields.put("undoes", row.getString("undoes"));
        fields.put("setAside", words(row, "set_aside"));
        fields.put("confirmed", words(row, "confirmed"));
        var at = row.getObject("recorded_at", OffsetDateTime.class).toInstant();
        return new JournalFact(container, kind, row.getObject("id", UUID.class), at, at,
                row.getObject("recorded_by", UUID.class), JournalFact.content(fields));
    }

    private static @Nullable String words(ResultSet row, String column) throws SQLException {
        var words = (String[]) row.getArray(column).getArray();
        return words.length == 0 ? null : String.join(" ", Arrays.asList(words));
    }
}
