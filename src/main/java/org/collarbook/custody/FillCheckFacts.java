package org.collarbook.custody;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.JournalFact;
import org.collarbook.platform.Journalled;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Who filled, and whether it leaked afterwards; a fill that tells neither has no such fact. */
@Component
class FillCheckFacts implements Journalled {

    private final JdbcClient jdbc;

    FillCheckFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<JournalFact> of(Collection<UUID> containers) {
        return jdbc.sql("""
                select id, container_id, filled_on, leak_found, filled_by, recorded_at, recorded_by from fill
                where container_id = any (?) and (leak_found is not null or filled_by is not null)""")
                .param(containers.toArray(UUID[]::new)).query(FillCheckFacts::read).list();
    }

    private static JournalFact read(ResultSet row, int number) throws SQLException {
        var fields = new LinkedHashMap<String, @Nullable Object>();
        fields.put("leakFound", row.getObject("leak_found"));
        fields.put("filledBy", row.getString("filled_by"));
        return new JournalFact(row.getObject("container_id", UUID.class), "FILL_CHECKED",
                row.getObject("id", UUID.class),
                row.getObject("filled_on", LocalDate.class).atStartOfDay(ZoneOffset.UTC).toInstant(),
                row.getObject("recorded_at", OffsetDateTime.class).toInstant(),
                row.getObject("recorded_by", UUID.class), JournalFact.content(fields));
    }
}
