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
import java.util.function.BiConsumer;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.json.JsonMapper;

/**
 * Reads facts from their tables, whole rows at a time, so that no column is forgotten: {@code content} is the row as one
 * JSON object, {@code more} a second row that belongs to it. A column that is null is left out; so one that a later
 * release adds must not have a default. A moment, by its name, is told in UTC: the database writes it in the zone of the
 * session.
 */
@Component
class JournalRows {

    /** What an entry tells beside its content. */
    private static final Set<String> BESIDE = Set.of("id", "container_id", "occurred_at", "recorded_at",
            "recorded_by");
    private static final String IN_ORDER = "select id, container_id, kind, occurred_at, recorded_at, recorded_by, content,"
            + " more from (%s) facts";
    private static final String MOMENT = "_at";
    private static final Pattern NEXT_WORD = Pattern.compile("_(\\w)");

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final Map<String, String> names = new ConcurrentHashMap<>();

    JournalRows(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    /** A fact with its rows still as the database gave them. */
    record Raw(UUID container, String kind, UUID subject, Instant occurredAt, Instant recordedAt, UUID recordedBy,
            String content, @Nullable String more) {}

    /** Of the containers, what all the selects give, in one statement. */
    List<Raw> read(Collection<String> selects, Collection<UUID> containers) {
        return jdbc.sql("with asked as materialized (select cast(:ids as uuid[]) as ids)\n"
                + selects.stream().map(IN_ORDER::formatted).collect(Collectors.joining("\nunion all\n")))
                .param("ids", containers.toArray(UUID[]::new))
                .query(JournalRows::raw).list();
    }

    private static Raw raw(ResultSet row, int number) throws SQLException {
        return new Raw(row.getObject("container_id", UUID.class), row.getString("kind"),
                row.getObject("id", UUID.class), StoredMoment.of(row, "occurred_at"),
                StoredMoment.of(row, "recorded_at"),
                row.getObject("recorded_by", UUID.class), row.getString("content"), row.getString("more"));
    }

    JournalFact fact(Raw raw) {
        var content = new TreeMap<String, String>();
        if (JournalFact.isVersion(raw.kind)) {
            // a replay makes the row anew
            columns(raw.content, Set.of("id"), content::put);
        } else {
            fill(content, raw.content);
            if (raw.more != null) {
                fill(content, raw.more);
            }
        }
        return new JournalFact(raw.container, raw.kind, raw.subject, raw.occurredAt, raw.recordedAt, raw.recordedBy,
                content);
    }

    private void fill(TreeMap<String, String> content, String row) {
        columns(row, BESIDE, (column, value) -> content.put(name(column), value));
    }

    /** The columns that are not null, without those named. */
    private void columns(String row, Set<String> without, BiConsumer<String, String> to) {
        try (var parser = json.createParser(row)) {
            parser.nextToken();
            while (parser.nextToken() == JsonToken.PROPERTY_NAME) {
                var column = parser.currentName();
                if (without.contains(column)) {
                    parser.nextToken();
                    parser.skipChildren();
                    continue;
                }
                var value = value(column, parser.nextToken(), parser);
                if (value != null) {
                    to.accept(column, value);
                }
            }
        }
    }

    private @Nullable String value(String column, JsonToken token, JsonParser parser) {
        return switch (token) {
            case VALUE_NULL -> null;
            case VALUE_STRING -> column.endsWith(MOMENT)
                    ? OffsetDateTime.parse(parser.getString()).toInstant().toString()
                    : parser.getString();
            case VALUE_NUMBER_INT -> parser.getString();
            case VALUE_NUMBER_FLOAT -> plain(new BigDecimal(parser.getString()));
            case VALUE_TRUE -> "true";
            case VALUE_FALSE -> "false";
            default -> String.valueOf((Object) parser.readValueAsTree());
        };
    }

    private static String plain(BigDecimal number) {
        return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
    }

    private String name(String column) {
        return names.computeIfAbsent(column, snake -> NEXT_WORD.matcher(snake)
                .replaceAll(found -> found.group(1).toUpperCase(Locale.ROOT)));
    }
}
