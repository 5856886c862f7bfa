package org.collarbook.schedule;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;

/** COPY takes no parameters, so its query carries them as literals: typed values and our own constants only. */
final class Literals {

    private static final Pattern PARAMETER = Pattern.compile("(?<![:\\w]):([a-z_]+)");
    private static final Pattern CONSTANT = Pattern.compile("[A-Z0-9_]+");

    private Literals() {}

    static String inline(String sql, Map<String, Object> parameters) {
        return PARAMETER.matcher(sql).replaceAll(name -> {
            var value = parameters.get(name.group(1));
            if (value == null) {
                throw new IllegalArgumentException("no value for " + name.group());
            }
            return literal(value);
        });
    }

    private static String literal(Object value) {
        return switch (value) {
            case LocalDate date -> "date '" + date + "'";
            case OffsetDateTime time -> "timestamptz '" + time + "'";
            case UUID id -> "uuid '" + id + "'";
            case String constant when CONSTANT.matcher(constant).matches() -> "'" + constant + "'";
            default -> throw new IllegalArgumentException("not a literal: " + value.getClass());
        };
    }
}
