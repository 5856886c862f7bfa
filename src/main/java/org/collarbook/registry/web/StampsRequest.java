package org.collarbook.registry.web;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

import org.collarbook.platform.Inputs;
import org.collarbook.registry.stamps.CollarReading;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Reading.Ambiguous;
import org.collarbook.regulation.Reading.Fault;
import org.collarbook.regulation.Reading.Read;
import org.collarbook.regulation.Reading.Unreadable;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampedMonth;
import org.jspecify.annotations.Nullable;

import tools.jackson.databind.annotation.JsonDeserialize;

import io.swagger.v3.oas.annotations.media.Schema;

/** Lines as read off, and what is known of the container beforehand; what is absent or null is not known. */
@Schema(requiredProperties = "lines")
record StampsRequest(@Nullable List<@Nullable String> lines, @Nullable String specification,
        @Nullable String manufactured, @JsonDeserialize(using = TextDate.class) @Nullable LocalDate asOf) {

    private static final int LONGEST = 200;

    List<String> checked(Inputs inputs) {
        return CollarReading.checked(lines, inputs);
    }

    Collar known(Inputs inputs, LocalDate today) {
        var day = asOf == null ? today : asOf;
        if (day.getYear() < 1900 || day.getYear() > 2199) {
            inputs.refuse("/asOf", "OUT_OF_RANGE", day.toString(), "a date from 1900 to 2199");
            day = today;
        }
        var design = design(inputs);
        return Collar.of(design, month(inputs, Collar.of(design, day)), day);
    }

    private @Nullable Specification design(Inputs inputs) {
        var text = inputs.optional("/specification", specification, LONGEST);
        return text == null ? null : switch (Specification.tryParse(text)) {
            case Parsed<Specification>(var read, var _) -> read;
            case Rejected<Specification>(int index, var found, var expected) -> {
                inputs.refuse("/specification", "UNKNOWN_SPECIFICATION", text, expected + "; at character "
                        + (index + 1) + " stands " + found);
                yield null;
            }
        };
    }

    private @Nullable YearMonth month(Inputs inputs, Collar collar) {
        var text = inputs.optional("/manufactured", manufactured, LONGEST);
        return text == null ? null : switch (StampedMonth.read(text, collar)) {
            case Read<YearMonth>(var _, var month, var _) -> month;
            case Ambiguous<YearMonth>(var _, var months, var because) -> {
                inputs.refuse("/manufactured", "AMBIGUOUS_MONTH", text, "one of " + months + ", written so: "
                        + because);
                yield null;
            }
            case Unreadable<YearMonth>(var _, var fault, int index, var found, var expected) -> {
                inputs.refuse("/manufactured", fault == Fault.IN_THE_FUTURE ? "IN_THE_FUTURE" : "INVALID_MONTH", text,
                        expected + "; at character " + (index + 1) + " stands " + found);
                yield null;
            }
        };
    }
}
