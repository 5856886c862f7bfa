package org.collarbook.inspection;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.JournalFact;
import org.collarbook.platform.Journalled;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What was done to containers. A mark bears no day, so it happened at the beginning of its month at the earliest. */
@Component
class InspectionFacts implements Journalled {

    private final JdbcClient jdbc;

    InspectionFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<JournalFact> of(Collection<UUID> containers) {
        return jdbc.sql("""
                select id, container_id, month, method, star, plus, rin, rin_seen, result, as_stamped, declaration_id,
                    recorded_at, recorded_by
                from requalification where container_id = any (?)""").param(containers.toArray(UUID[]::new))
                .query(InspectionFacts::read).list();
    }

    private static JournalFact read(ResultSet row, int number) throws SQLException {
        var month = row.getObject("month", LocalDate.class);
        var fields = new HashMap<String, @Nullable Object>();
        fields.put("month", YearMonth.from(month));
        fields.put("method", row.getString("method"));
        fields.put("star", row.getBoolean("star"));
        fields.put("plus", row.getBoolean("plus"));
        fields.put("rin", row.getString("rin"));
        fields.put("rinSeen", row.getBoolean("rin_seen"));
        fields.put("result", row.getString("result"));
        fields.put("asStamped", row.getString("as_stamped"));
        fields.put("declaration", row.getObject("declaration_id", UUID.class));
        return new JournalFact(row.getObject("container_id", UUID.class), "REQUALIFIED",
                row.getObject("id", UUID.class), month.atStartOfDay(ZoneOffset.UTC).toInstant(),
                row.getObject("recorded_at", OffsetDateTime.class).toInstant(),
                row.getObject("recorded_by", UUID.class), JournalFact.content(fields));
    }
}
