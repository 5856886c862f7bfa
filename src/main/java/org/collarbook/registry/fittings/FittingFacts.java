package org.collarbook.registry.fittings;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.JournalFact;
import org.collarbook.platform.Journalled;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Parts fitted and taken out, and when tanks went out of service and came back. */
@Component
class FittingFacts implements Journalled {

    private final JdbcClient jdbc;

    FittingFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<JournalFact> of(Collection<UUID> containers) {
        var ids = containers.toArray(UUID[]::new);
        var facts = new ArrayList<JournalFact>();
        read(facts, "PART_FITTED", List.of("kind", "maker", "model", "serial", "manufactured", "labelled_for"), """
                select p.*, p.id as subject, p.fitted_on as day from part p where p.container_id = any (?)""", ids);
        read(facts, "PART_REMOVED", List.of("reason", "for_good"), """
                select r.*, p.container_id, p.id as subject, r.removed_on as day
                from part_removal r join part p on p.id = r.part_id where p.container_id = any (?)""", ids);
        read(facts, "OUT_OF_SERVICE", List.of("reason"), """
                select o.*, o.id as subject, o.since as day from out_of_service o where o.container_id = any (?)""",
                ids);
        read(facts, "RETURNED_TO_SERVICE", List.of("note"), """
                select b.*, o.container_id, o.id as subject, b.returned_on as day
                from return_to_service b join out_of_service o on o.id = b.out_of_service_id
                where o.container_id = any (?)""", ids);
        return facts;
    }

    private void read(List<JournalFact> facts, String kind, List<String> columns, String sql, UUID[] ids) {
        facts.addAll(jdbc.sql(sql).param(ids).query((row, number) -> fact(row, kind, columns)).list());
    }

    private static JournalFact fact(ResultSet row, String kind, List<String> columns) throws SQLException {
        var day = row.getObject("day", LocalDate.class);
        var fields = new LinkedHashMap<String, @Nullable Object>();
        fields.put("on", day);
        for (var column : columns) {
            fields.put(column, row.getObject(column));
        }
        return new JournalFact(row.getObject("container_id", UUID.class), kind, row.getObject("subject", UUID.class),
                day.atStartOfDay(ZoneOffset.UTC).toInstant(),
                row.getObject("recorded_at", OffsetDateTime.class).toInstant(),
                row.getObject("recorded_by", UUID.class), JournalFact.content(fields));
    }
}
