package org.collarbook.schedule;

import java.time.DateTimeException;
import java.time.YearMonth;
import java.util.Locale;
import java.util.UUID;

import org.collarbook.custody.NamedPlace;
import org.collarbook.custody.NamedPlace.Kind;
import org.collarbook.custody.Places;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.Inputs;
import org.collarbook.registry.Size;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Reads what is asked for, and notes everything that is wrong with it. */
@Component
class ScheduleQuestions {

    private static final YearMonth FIRST = YearMonth.of(1900, 1);
    private static final YearMonth LAST = YearMonth.of(2199, 12);
    private static final int LONGEST = 200;

    private final Places places;

    ScheduleQuestions(Places places) {
        this.places = places;
    }

    ScheduleFilter read(ScheduleQuestion asked, Inputs wrong) {
        var from = month("from", asked.from(), wrong);
        var to = month("to", asked.to(), wrong);
        if (from != null && to != null && to.isBefore(from)) {
            wrong.refuse("to", "OUT_OF_RANGE", to.toString(), "a month not before from, " + from);
        }
        return new ScheduleFilter(from, to, place(Kind.SITE, asked.site(), wrong),
                place(Kind.CUSTOMER, asked.customer(), wrong), place(Kind.ROUTE, asked.route(), wrong),
                wrong.word("kind", asked.kind(), ContainerKind.class), size(asked.containerSize(), wrong),
                specification(asked.specification(), wrong),
                wrong.word("requirement", asked.requirement(), Requirement.class),
                wrong.word("status", asked.status(), Status.class),
                wrong.optional("owner", asked.owner(), LONGEST));
    }

    /** The same where the question stands in a body, under {@code /filter}. */
    ScheduleFilter ofBody(ScheduleQuestion asked, Inputs wrong) {
        var ofFilter = new Inputs();
        var filter = read(asked, ofFilter);
        refuseUnder("/filter/", ofFilter, wrong);
        return filter;
    }

    /** What is wrong with a parameter is wrong with a field of a body. */
    static void refuseUnder(String place, Inputs found, Inputs wrong) {
        wrong.refuse(found.errors().stream().map(error -> new FieldError(place + error.pointer(), error.code(),
                error.found(), error.accepted())).toList());
    }

    private static @Nullable YearMonth month(String pointer, @Nullable String given, Inputs wrong) {
        if (given == null || given.isBlank()) {
            return null;
        }
        try {
            var month = YearMonth.parse(given.strip());
            if (!month.isBefore(FIRST) && !month.isAfter(LAST)) {
                return month;
            }
        } catch (DateTimeException unreadable) {
            // told below, with what is accepted
        }
        wrong.refuse(pointer, "INVALID_MONTH", given, "a month as YYYY-MM, from " + FIRST + " to " + LAST);
        return null;
    }

    private @Nullable UUID place(Kind kind, @Nullable String given, Inputs wrong) {
        var word = kind.name().toLowerCase(Locale.ROOT);
        var name = wrong.optional(word, given, LONGEST);
        if (name == null) {
            return null;
        }
        var found = places.named(kind, name);
        if (found.isEmpty()) {
            wrong.refuse(word, "UNKNOWN_" + kind, given, "the id or code of a " + word);
        }
        return found.map(NamedPlace::id).orElse(null);
    }

    private static @Nullable String size(@Nullable String given, Inputs wrong) {
        var text = wrong.optional("containerSize", given, LONGEST);
        if (text == null || text.equalsIgnoreCase(Size.UNKNOWN.word())) {
            return text == null ? null : Size.UNKNOWN.word();
        }
        var size = Size.parse(text);
        if (size.isEmpty()) {
            wrong.refuse("containerSize", "UNKNOWN_SIZE", given, Size.ACCEPTED + "; or " + Size.UNKNOWN.word());
        }
        return size.map(Size::word).orElse(null);
    }

    private static @Nullable String specification(@Nullable String given, Inputs wrong) {
        var text = wrong.optional("specification", given, LONGEST);
        if (text == null) {
            return null;
        }
        return switch (Specification.tryParse(text)) {
            case ParseResult.Parsed<Specification> read -> read.value().toString();
            case ParseResult.Rejected<Specification> refused -> {
                wrong.refuse("specification", "UNKNOWN_SPECIFICATION", given, refused.expected());
                yield null;
            }
        };
    }
}
