package org.collarbook.platform;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;

/** What is accepted for a type, in words. */
public final class Accepted {

    private static final Map<Class<?>, String> WORDS = Map.of(LocalDate.class, "a date as YYYY-MM-DD", YearMonth.class,
            "a month as YYYY-MM", Instant.class, "a moment such as 2026-11-25T14:30:00Z", UUID.class,
            "an id as this service gave it", Integer.class, "a whole number",
            int.class,
            "a whole number", BigDecimal.class, "a number", Boolean.class, "true or false", boolean.class,
            "true or false");

    private Accepted() {}

    public static String of(@Nullable Class<?> type) {
        if (type == null) {
            return "a value of the documented type";
        }
        if (type.isEnum()) {
            return "one of " + Arrays.stream(type.getEnumConstants()).map(String::valueOf)
                    .collect(Collectors.joining(", "));
        }
        return WORDS.getOrDefault(type, "a value of the documented type");
    }
}
