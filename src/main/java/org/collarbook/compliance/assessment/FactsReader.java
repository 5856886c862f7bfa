package org.collarbook.compliance.assessment;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

import org.collarbook.platform.Inputs;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.Policy;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** Reads the single facts of a request and notes each that cannot be accepted. */
final class FactsReader {

    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 2199;

    private final Inputs inputs;
    private final LocalDate today;
    private final RuleBook rules;

    FactsReader(Inputs inputs, LocalDate today, RuleBook rules) {
        this.inputs = inputs;
        this.today = today;
        this.rules = rules;
    }

    void refuse(String pointer, String code, @Nullable String found, String accepted) {
        inputs.refuse(pointer, code, found, accepted);
    }

    /** The later of today and the day asked about: nothing can be stamped after both. */
    LocalDate latest(@Nullable LocalDate asOf) {
        return asOf == null || asOf.isBefore(today) ? today : asOf;
    }

    @Nullable
    String text(String pointer, @Nullable String given, int longest) {
        return inputs.optional(pointer, given, longest);
    }

    @Nullable
    String required(String pointer, @Nullable String given, int longest) {
        return inputs.required(pointer, given, longest);
    }

    <E extends Enum<E>> @Nullable E word(String pointer, @Nullable String given, Class<E> words) {
        return inputs.word(pointer, given, words);
    }

    @Nullable
    LocalDate day(String pointer, @Nullable String given) {
        if (given == null) {
            return null;
        }
        try {
            var day = LocalDate.parse(given);
            if (day.getYear() >= FIRST_YEAR && day.getYear() <= LAST_YEAR) {
                return day;
            }
        } catch (DateTimeParseException unreadable) {
            // told below, with what is accepted
        }
        refuse(pointer, "INVALID_DATE", given, "a date such as 2026-11-25, from 1900 to 2199");
        return null;
    }

    @Nullable
    LocalDate notBefore(@Nullable YearMonth manufactured, String pointer, @Nullable String given) {
        var day = day(pointer, given);
        if (day != null && manufactured != null && day.isBefore(manufactured.atDay(1))) {
            refuse(pointer, "BEFORE_MANUFACTURE", given, "a day from " + manufactured + " on");
            return null;
        }
        return day;
    }

    @Nullable
    YearMonth month(String pointer, @Nullable String given) {
        if (given == null) {
            return null;
        }
        try {
            var month = YearMonth.parse(given);
            if (month.getYear() >= FIRST_YEAR && month.getYear() <= LAST_YEAR) {
                return month;
            }
        } catch (DateTimeParseException unreadable) {
            // told below, with what is accepted
        }
        refuse(pointer, "INVALID_MONTH", given, "a month such as 2016-05, from 1900 to 2199");
        return null;
    }

    @Nullable
    YearMonth manufactured(String pointer, @Nullable String given, @Nullable LocalDate asOf) {
        var month = month(pointer, given);
        var latest = YearMonth.from(latest(asOf));
        if (month != null && month.isAfter(latest)) {
            refuse(pointer, "IN_THE_FUTURE", given, "a month not after " + latest);
        }
        return month;
    }

    @Nullable
    Jurisdiction jurisdiction(String pointer, @Nullable String given) {
        if (given == null || Jurisdiction.isWellFormed(given)) {
            return given == null ? null : new Jurisdiction(given);
        }
        refuse(pointer, "INVALID_JURISDICTION", given, "a country, or country and province, such as US or CA-BC");
        return null;
    }

    @Nullable
    Specification specification(String pointer, @Nullable String given) {
        return given == null ? null : parsed(pointer, "UNKNOWN_SPECIFICATION", given, Specification.tryParse(given));
    }

    @Nullable
    WaterCapacity capacity(String pointer, @Nullable String given) {
        return given == null ? null : parsed(pointer, "INVALID_CAPACITY", given, WaterCapacity.tryParse(given));
    }

    <T> @Nullable T parsed(String pointer, String code, String given, ParseResult<T> result) {
        return switch (result) {
            case ParseResult.Parsed<T>(T value, List<String> _) -> value;
            case ParseResult.Rejected<T>(int index, String _, String expected) -> {
                refuse(pointer, code, given, expected + " (from character " + (index + 1) + ")");
                yield null;
            }
        };
    }

    @Nullable
    Lading lading(String pointer, @Nullable String given) {
        if (given == null || Lading.isWellFormed(given)) {
            return given == null ? null : new Lading(given);
        }
        refuse(pointer, "INVALID_LADING", given, "a name in capitals such as LPG or ANHYDROUS_AMMONIA");
        return null;
    }

    @Nullable
    BigDecimal between(String pointer, @Nullable BigDecimal given, int least, int most) {
        if (given == null || given.compareTo(BigDecimal.valueOf(least)) >= 0
                && given.compareTo(BigDecimal.valueOf(most)) <= 0) {
            return given;
        }
        refuse(pointer, "OUT_OF_RANGE", given.toString(), "a number from " + least + " to " + most);
        return null;
    }

    @Nullable
    Integer whole(String pointer, @Nullable BigDecimal given, int least, int most) {
        var number = between(pointer, given, least, most);
        if (number == null || number.stripTrailingZeros().scale() <= 0) {
            return number == null ? null : number.intValue();
        }
        refuse(pointer, "OUT_OF_RANGE", number.toString(), "a whole number from " + least + " to " + most);
        return null;
    }

    boolean tooMany(String pointer, List<?> entries, int most) {
        if (entries.size() > most) {
            refuse(pointer, "TOO_MANY", String.valueOf(entries.size()), "at most " + most + " entries");
            return true;
        }
        return false;
    }

    Set<Policy> policies(String pointer, @Nullable List<String> given) {
        var policies = EnumSet.noneOf(Policy.class);
        for (int i = 0; given != null && i < given.size(); i++) {
            var policy = inputs.word(pointer + "/" + i, given.get(i), Policy.class);
            if (policy != null) {
                policies.add(policy);
            }
        }
        return policies;
    }

    /** Rule ids or bases that exist: a typo must not pass for a switch that was thrown. */
    Set<String> enabled(String pointer, @Nullable List<String> given) {
        Set<String> enabled = new LinkedHashSet<>();
        if (given == null || given.isEmpty()) {
            return enabled;
        }
        for (int i = 0; i < given.size(); i++) {
            if (rules.canEnable(given.get(i))) {
                enabled.add(given.get(i));
            } else {
                refuse(pointer + "/" + i, "UNKNOWN_RULE", given.get(i),
                        "a rule's id, or one of " + Arrays.toString(Basis
                                .values()));
            }
        }
        return enabled;
    }
}
