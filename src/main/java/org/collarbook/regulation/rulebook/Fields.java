package org.collarbook.regulation.rulebook;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.Period;
import java.time.YearMonth;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** One mapping of a rule file, read field by field; a field that nobody read is refused by {@link #done()}. */
final class Fields {

    private final String path;
    private final Map<String, Object> map = new LinkedHashMap<>();
    private final Set<String> read = new LinkedHashSet<>();

    Fields(String path, Map<?, ?> map) {
        this.path = path;
        map.forEach((key, value) -> this.map.put(String.valueOf(key), value));
    }

    /** The same fields under a name that tells more. */
    Fields renamed(String name) {
        return new Fields(name, map);
    }

    String path() {
        return path;
    }

    /** As written, for showing. */
    Map<String, Object> asMap() {
        return Collections.unmodifiableMap(map);
    }

    Set<String> keys() {
        return map.keySet();
    }

    boolean has(String key) {
        return map.containsKey(key);
    }

    RuleBookException wrong(String key, String problem) {
        return new RuleBookException(path + "." + key, problem);
    }

    private @Nullable Object raw(String key) {
        read.add(key);
        return map.get(key);
    }

    @Nullable
    String optional(String key) {
        Object value = raw(key);
        if (value == null || value instanceof String text && text.isBlank()) {
            return null;
        }
        if (value instanceof String text) {
            return text.strip();
        }
        throw wrong(key, "expected a single value");
    }

    String text(String key) {
        String text = optional(key);
        if (text == null) {
            throw wrong(key, "missing, expected a text");
        }
        return text;
    }

    <T> @Nullable T optional(String key, String expected, Function<String, T> parse) {
        String text = optional(key);
        if (text == null) {
            return null;
        }
        try {
            return parse.apply(text);
        } catch (IllegalArgumentException | DateTimeParseException refused) {
            throw new RuleBookException(path + "." + key, "found '" + text + "', expected " + expected, refused);
        }
    }

    <T> T required(String key, String expected, Function<String, T> parse) {
        T value = optional(key, expected, parse);
        if (value == null) {
            throw wrong(key, "missing, expected " + expected);
        }
        return value;
    }

    LocalDate date(String key) {
        return required(key, "a date such as 2020-11-30", LocalDate::parse);
    }

    @Nullable
    LocalDate optionalDate(String key) {
        return optional(key, "a date such as 2020-11-30", LocalDate::parse);
    }

    YearMonth month(String key) {
        return required(key, "a month such as 1991-01", YearMonth::parse);
    }

    BigDecimal number(String key) {
        return required(key, "a number", BigDecimal::new);
    }

    boolean flag(String key) {
        return required(key, "true or false", Fields::bool);
    }

    static boolean bool(String text) {
        return switch (text) {
            case "true" -> true;
            case "false" -> false;
            default -> throw new IllegalArgumentException(text);
        };
    }

    int months(String key) {
        return (int) required(key, "a period such as P12Y or P30M", Period::parse).toTotalMonths();
    }

    <E extends Enum<E>> E choice(String key, Class<E> type) {
        return required(key, "one of " + EnumSet.allOf(type), text -> Enum.valueOf(type, text));
    }

    <E extends Enum<E>> @Nullable E optionalChoice(String key, Class<E> type) {
        return optional(key, "one of " + EnumSet.allOf(type), text -> Enum.valueOf(type, text));
    }

    List<String> texts(String key) {
        Object value = raw(key);
        List<String> texts = new ArrayList<>();
        if (value instanceof List<?> list) {
            list.forEach(item -> texts.add(String.valueOf(item)));
        } else if (value instanceof String text && !text.isBlank()) {
            texts.add(text.strip());
        }
        return texts;
    }

    Set<String> set(String key) {
        return new LinkedHashSet<>(texts(key));
    }

    <E extends Enum<E>> Set<E> choices(String key, Class<E> type) {
        Set<E> found = EnumSet.noneOf(type);
        for (String text : texts(key)) {
            try {
                found.add(Enum.valueOf(type, text));
            } catch (IllegalArgumentException unknown) {
                throw new RuleBookException(path + "." + key,
                        "found '" + text + "', expected of " + EnumSet.allOf(type),
                        unknown);
            }
        }
        return found;
    }

    @Nullable
    Fields optionalChild(String key) {
        Object value = raw(key);
        if (value == null) {
            return null;
        }
        if (value instanceof Map<?, ?> child) {
            return new Fields(path + "." + key, child);
        }
        throw wrong(key, "expected a mapping");
    }

    Fields child(String key) {
        Fields child = optionalChild(key);
        if (child == null) {
            throw wrong(key, "missing, expected a mapping");
        }
        return child;
    }

    List<Fields> children(String key) {
        if (!(raw(key) instanceof List<?> list)) {
            throw wrong(key, "expected a list");
        }
        List<Fields> children = new ArrayList<>();
        for (Object item : list) {
            if (!(item instanceof Map<?, ?> child)) {
                throw wrong(key + "[" + children.size() + "]", "expected a mapping");
            }
            children.add(new Fields(path + "." + key + "[" + children.size() + "]", child));
        }
        return children;
    }

    void done() {
        for (String key : map.keySet()) {
            if (!read.contains(key)) {
                throw wrong(key, "unknown field, expected only " + read);
            }
        }
    }
}
