package org.collarbook.compliance;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.RowCallbackHandler;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Reads containers with all their facts, any number of them in two statements. */
@Component
public class StoredContainers {

    private static final String SELECT = """
            select c.*, d.declared_by, d.declared_on, d.jurisdiction as declared_jurisdiction,
                   p.site_id, s.code as site_code, s.name as site_name, s.zone, s.jurisdiction, s.customer_id,
                   (select max(f.filled_on) from fill f where f.container_id = c.id) as filled_on
            from container c
            left join declaration d on d.id = c.declaration_id
            left join placement p on p.container_id = c.id
            left join site s on s.id = p.site_id
            """;

    private final JdbcClient jdbc;

    StoredContainers(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public Optional<StoredContainer> byId(UUID id) {
        return byIds(List.of(id)).stream().findFirst();
    }

    /** In the order of the ids; ids that name no container are passed over. */
    public List<StoredContainer> byIds(Collection<UUID> ids) {
        var order = ids.toArray(UUID[]::new);
        var found = new HashMap<UUID, StoredContainer>();
        read(SELECT + "where c.id = any(?)", List.of((Object) order))
                .forEach(container -> found.put(container.id(), container));
        return Arrays.stream(order).map(found::get).filter(Objects::nonNull).toList();
    }

    /** The next containers by id, for a walk over the whole register. */
    List<StoredContainer> after(@Nullable UUID id, int limit) {
        return id == null
                ? read(SELECT + "order by c.id limit ?", List.of(limit))
                : read(SELECT + "where c.id > ? order by c.id limit ?", List.of(id, limit));
    }

    List<StoredContainer> byTag(String tag) {
        return read(SELECT + "where c.tag = ?", List.of(tag));
    }

    List<StoredContainer> bySerial(String serial, @Nullable String specification, int limit) {
        return specification == null
                ? read(SELECT + "where c.serial = ? order by c.id limit ?", List.of(serial, limit))
                : read(SELECT + "where c.serial = ? and c.specification = ? order by c.id limit ?",
                        List.of(serial, specification, limit));
    }

    private List<StoredContainer> read(String sql, List<Object> parameters) {
        var rows = jdbc.sql(sql).params(parameters).query((row, n) -> StoredContainerRow.of(row)).list();
        if (rows.isEmpty()) {
            return List.of();
        }
        var history = history(rows.stream().map(StoredContainerRow::id).toArray(UUID[]::new));
        return rows.stream().map(row -> row.with(history.getOrDefault(row.id(), List.of()))).toList();
    }

    private Map<UUID, List<Requalification>> history(UUID[] ids) {
        var history = new HashMap<UUID, List<Requalification>>();
        RowCallbackHandler collect = row -> history
                .computeIfAbsent(row.getObject("container_id", UUID.class), id -> new ArrayList<>())
                .add(requalification(row));
        jdbc.sql("""
                select container_id, month, method, star, plus, rin, rin_seen, result
                from requalification where container_id = any(?)""").param(ids).query(collect);
        return history;
    }

    private static Requalification requalification(ResultSet row) throws SQLException {
        var method = row.getString("method");
        var rin = row.getString("rin");
        return new Requalification(Columns.month(row, "month"), method == null ? null : Method.valueOf(method),
                row.getBoolean("star"), row.getBoolean("plus"), rin == null ? null : Rin.parse(rin),
                row.getBoolean("rin_seen"), Requalification.Result.valueOf(row.getString("result")));
    }
}
