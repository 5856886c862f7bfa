package org.collarbook.schedule;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * COPY takes no parameters, so its query carries them as literals: typed values, our own constants, and text as the
 * digits of its octets, which end no literal whatever they spell.
 */
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
            return Matcher.quoteReplacement(literal(value));
        });
    }

    private static String literal(Object value) {
        return switch (value) {
            case LocalDate date -> "date '" + date + "'";
            case OffsetDateTime time -> "timestamptz '" + time + "'";
            case String[] constants -> Arrays.stream(constants).map(Literals::literal)
                    .collect(Collectors.joining(", ", "array[", "]::text[]"));
            case UUID id -> "uuid '" + id + "'";
            case String constant when CONSTANT.matcher(constant).matches() -> "'" + constant + "'";
            case String text -> "convert_from('\\x" + HexFormat.of().formatHex(text.getBytes(StandardCharsets.UTF_8))
                    + "'::bytea, 'UTF8')";
            default -> throw new IllegalArgumentException("not a literal: " + value.getClass());
        };
    }
}
