package org.collarbook.compliance.transport;

import java.sql.ResultSet;
import java.sql.SQLException;
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

/** Tanks that were moved by road, with the inspection before it. */
@Component
class TransportFacts implements Journalled {

    private final JdbcClient jdbc;

    TransportFacts(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public List<JournalFact> of(Collection<UUID> containers) {
        return jdbc.sql("select * from transport_record where container_id = any (?)")
                .param(containers.toArray(UUID[]::new)).query(TransportFacts::read).list();
    }

    private static JournalFact read(ResultSet row, int number) throws SQLException {
        var transport = Transports.read(row, number);
        var told = transport.told();
        var fields = new LinkedHashMap<String, @Nullable Object>();
        fields.put("movedOn", told.movedOn());
        fields.put("percentFull", told.percentFull());
        fields.put("purpose", told.purpose());
        fields.put("from", told.from());
        fields.put("to", told.to());
        fields.put("carrier", told.carrier());
        fields.put("inspectedOn", told.inspectedOn());
        fields.put("inspectedBy", told.inspectedBy());
        fields.put("leakFree", told.leakFree());
        fields.put("secured", told.secured());
        fields.put("findings", told.findings());
        fields.put("refusedFor", String.join(",", transport.refusedFor()));
        return new JournalFact(transport.containerId(), "TRANSPORTED", transport.id(),
                told.movedOn().atStartOfDay(ZoneOffset.UTC).toInstant(), transport.recordedAt(),
                row.getObject("recorded_by", UUID.class), JournalFact.content(fields));
    }
}
