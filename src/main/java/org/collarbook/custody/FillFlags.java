package org.collarbook.custody;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.Ids;
import org.collarbook.platform.StoredMoment;
import org.collarbook.regulation.Reason;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

import tools.jackson.databind.json.JsonMapper;

/** What was found of fills later, as facts: a flag is followed by another, never taken away. */
@Component
public class FillFlags {

    /** Nobody judges a fill anew: the register does. */
    private static final UUID REGISTER = new UUID(0, 0);

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Clock clock;

    FillFlags(JdbcClient jdbc, JsonMapper json, Clock clock) {
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
    }

    @Transactional(propagation = Propagation.MANDATORY)
    public void append(PastFill fill, List<Reason> reasons, int ruleBook) {
        jdbc.sql("""
                insert into fill_flag (id, fill_id, container_id, reasons, rule_book_id, recorded_at, recorded_by)
                values (?, ?, ?, cast(? as jsonb), ?, ?, ?)""")
                .params(Ids.next(), fill.id(), fill.containerId(), json.writeValueAsString(reasons), ruleBook,
                        clock.instant().atOffset(ZoneOffset.UTC), REGISTER)
                .update();
    }

    /** Of those of the fills that have any, the latest first. */
    public Map<UUID, List<FillFlag>> of(Collection<UUID> fills) {
        return fills.isEmpty()
                ? Map.of()
                : jdbc.sql("""
                        select id, fill_id, container_id, reasons, recorded_at, recorded_by from fill_flag
                        where fill_id = any (?) order by fill_id, id desc""").param(fills.toArray(UUID[]::new))
                        .query(this::read).list().stream().collect(Collectors.groupingBy(FillFlag::fillId));
    }

    /** Of all fills of a container, the latest first. */
    public List<FillFlag> of(UUID container, int atMost) {
        return jdbc.sql("""
                select g.id, g.fill_id, f.container_id, g.reasons, g.recorded_at, g.recorded_by
                from filed_fill f join fill_flag g on g.fill_id = f.id
                where f.container_id = ? order by g.id desc limit ?""").params(container, atMost).query(this::read)
                .list();
    }

    private FillFlag read(ResultSet row, int number) throws SQLException {
        return new FillFlag(row.getObject("id", UUID.class), row.getObject("fill_id", UUID.class),
                row.getObject("container_id", UUID.class),
                List.of(json.readValue(row.getString("reasons"), Reason[].class)),
                StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class));
    }
}
