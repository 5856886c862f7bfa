package org.collarbook.platform;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.ObjectReader;
import tools.jackson.databind.json.JsonMapper;

/**
 * Reads facts from their tables, whole rows at a time, so that no column is forgotten: {@code content} is the row as one
 * JSON object. A column that is null is left out; so one that a later release adds must not have a default. No moment may
 * be in it but as UTC: the database writes one with a zone in the zone of the session.
 */
@Component
public class JournalRows {

    /** What an entry tells beside its content. */
    private static final Set<String> BESIDE = Set.of("id", "container_id", "occurred_at", "recorded_at",
            "recorded_by");
    private static final Pattern NEXT_WORD = Pattern.compile("_(\\w)");

    private final JdbcClient jdbc;
    private final ObjectReader json;
    private final Map<String, String> names = new ConcurrentHashMap<>();

    JournalRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json.reader().with(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);
    }

    /**
     * @param select gives id, container_id, kind, occurred_at, recorded_at, recorded_by and content for the containers
     *            {@code :ids}
     */
    public List<JournalFact> read(String select, Collection<UUID> containers) {
        return jdbc.sql(select).param("ids", containers.toArray(UUID[]::new)).query(this::fact).list();
    }

    private JournalFact fact(ResultSet row, int number) throws SQLException {
        return new JournalFact(row.getObject("container_id", UUID.class), row.getString("kind"),
                row.getObject("id", UUID.class), time(row, "occurred_at"), time(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class), content(row.getString("content")));
    }

    private TreeMap<String, String> content(String row) {
        var content = new TreeMap<String, String>();
        json.readTree(row).properties().forEach(field -> {
            var value = field.getValue();
            if (!value.isNull() && !BESIDE.contains(field.getKey())) {
                content.put(name(field.getKey()), value.isString()
                        ? value.asString()
                        : value.isNumber() ? plain(value.decimalValue()) : value.toString());
            }
        });
        return content;
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    private String name(String column) {
        return names.computeIfAbsent(column, snake -> NEXT_WORD.matcher(snake)
                .replaceAll(found -> found.group(1).toUpperCase(Locale.ROOT)));
    }

    private static Instant time(ResultSet row, String column) throws SQLException {
        return row.getObject(column, OffsetDateTime.class).toInstant();
    }
}
