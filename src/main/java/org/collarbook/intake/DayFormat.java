package org.collarbook.intake;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.time.format.ResolverStyle;
import java.util.Locale;
import java.util.regex.Pattern;

import org.jspecify.annotations.Nullable;

/**
 * In which order the days of a file have day, month and year, such as MM/dd/yyyy: somebody says so, since 03/02/2026 is
 * two days. The year has four digits, for no century is guessed; day and month may leave out their leading zero.
 */
final class DayFormat {

    static final String ACCEPTED = "day (dd), month (MM or MMM) and year (yyyy) once each in their order, with - / . or a"
            + " space between, such as MM/dd/yyyy or dd.MM.yyyy";
    private static final Pattern SHAPE = Pattern.compile(
            "(?=.*d)(?=.*M)(?=.*y)(dd?|MM?M?|yyyy)([-/. ])(dd?|MM?M?|yyyy)\\2(dd?|MM?M?|yyyy)");

    private final String pattern;
    private final DateTimeFormatter reader;

    private DayFormat(String pattern) {
        this.pattern = pattern;
        var shortest = pattern.replace("dd", "d").replaceAll("(?<!M)MM(?!M)", "M").replace("yyyy", "uuuu");
        reader = new DateTimeFormatterBuilder().parseCaseInsensitive().appendPattern(shortest)
                .toFormatter(Locale.ENGLISH).withResolverStyle(ResolverStyle.STRICT);
    }

    /** Null where the pattern is none. */
    static @Nullable DayFormat of(String pattern) {
        return SHAPE.matcher(pattern).matches() ? new DayFormat(pattern) : null;
    }

    @Nullable
    LocalDate parse(String text) {
        try {
            return LocalDate.parse(text, reader);
        } catch (DateTimeParseException another) {
            return null;
        }
    }

    @Override
    public String toString() {
        return pattern;
    }
}
