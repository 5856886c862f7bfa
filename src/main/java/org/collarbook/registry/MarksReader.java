package org.collarbook.registry;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.collarbook.platform.FieldError;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

final class MarksReader {

    private static final String KINDS = "one of " + Arrays.stream(ContainerKind.values()).map(Enum::name)
            .collect(Collectors.joining(", "));
    private static final String SPECIFICATION = "a specification such as DOT-4BA240, TC-4BAM17, DOT-SP12345, UN, ASME"
            + " or MC-331";

    /** Longer than any stamp, so that no reading of a text can take long. */
    private static final int LONGEST = 100;

    private final StampedMarks stamped;
    private final LocalDate asOf;
    private final List<FieldError> refusals = new ArrayList<>();
    private final List<FieldError> remarks = new ArrayList<>();

    MarksReader(StampedMarks stamped, LocalDate asOf) {
        this.stamped = stamped;
        this.asOf = asOf;
    }

    StampedMarks.Reading read() {
        var kind = kind(required("/kind", stamped.kind(), KINDS));
        var specification = value("/specification", "UNKNOWN_SPECIFICATION",
                required("/specification", stamped.specification(), SPECIFICATION), Specification::tryParse);
        var serial = value("/serial", "INVALID_SERIAL", required("/serial", stamped.serial(), Serial.EXPECTED),
                Serial::tryParse);
        var maker = value("/maker", "INVALID_MAKER", stamped.maker(), MakerSymbol::tryParse);
        var manufactured = month(stamped.manufactured(), specification == null ? null : specification.value());
        var capacity = value("/waterCapacity", "INVALID_WATER_CAPACITY", stamped.waterCapacity(),
                Capacities::tryParse);
        var tare = value("/tare", "INVALID_TARE", stamped.tare(), Tare::tryParse);
        var pressure = value("/servicePressure", "INVALID_SERVICE_PRESSURE", stamped.servicePressure(),
                ServicePressure::tryParse);
        if (kind != null && specification != null) {
            compare(kind, specification.value());
        }
        var marks = kind == null || specification == null || serial == null || !refusals.isEmpty()
                ? null
                : new Marks(kind, specification, maker == null ? null : maker.value(), serial, manufactured, capacity,
                        tare, pressure == null ? null : pressure.value());
        return new StampedMarks.Reading(marks, List.copyOf(refusals), List.copyOf(remarks));
    }

    private @Nullable String required(String pointer, @Nullable String text, String accepted) {
        if (text == null || text.isBlank()) {
            refusals.add(new FieldError(pointer, "MISSING", text, accepted));
            return null;
        }
        return text;
    }

    private @Nullable ContainerKind kind(@Nullable String text) {
        if (text == null) {
            return null;
        }
        try {
            return ContainerKind.valueOf(text.strip().toUpperCase(Locale.ROOT).replace(' ', '_'));
        } catch (IllegalArgumentException unknown) {
            refusals.add(new FieldError("/kind", "UNKNOWN_KIND", text, KINDS));
            return null;
        }
    }

    private <T> @Nullable Stamped<T> value(String pointer, String code, @Nullable String text,
            Function<String, ParseResult<T>> parser) {
        if (text == null || text.isBlank()) {
            return null;
        }
        if (text.length() > LONGEST) {
            refusals.add(new FieldError(pointer, code, text, "at most " + LONGEST + " characters"));
            return null;
        }
        return switch (parser.apply(text)) {
            case Parsed<T>(var value, var warnings) -> {
                warnings.forEach(warning -> remarks.add(new FieldError(pointer, "READ_WITH_A_DOUBT", text, warning)));
                yield new Stamped<>(value, text);
            }
            case Rejected<T>(int index, var found, var expected) -> {
                refusals.add(new FieldError(pointer, code, text, expected + "; at character " + (index + 1) + " stands "
                        + found));
                yield null;
            }
        };
    }

    private @Nullable Stamped<YearMonth> month(@Nullable String text, @Nullable Specification specification) {
        if (text == null || text.isBlank()) {
            return null;
        }
        if (text.length() > LONGEST) {
            refusals.add(new FieldError("/manufactured", "INVALID_MONTH", text, "at most " + LONGEST + " characters"));
            return null;
        }
        switch (StampedMonth.read(text, asOf, specification)) {
            case StampedMonth.Read(var month) -> {
                return new Stamped<>(month, text);
            }
            case StampedMonth.Ambiguous(var months) -> refusals.add(new FieldError("/manufactured", "AMBIGUOUS_MONTH",
                    text, "one of " + months + ", written so"));
            case StampedMonth.Unreadable(int index, var found, var expected, boolean future) -> refusals.add(
                    new FieldError("/manufactured", future ? "IN_THE_FUTURE" : "INVALID_MONTH", text, expected
                            + "; at character " + (index + 1) + " stands " + found));
        }
        return null;
    }

    private void compare(ContainerKind kind, Specification specification) {
        var possible = Kinds.of(specification);
        if (!possible.contains(kind)) {
            refusals.add(new FieldError("/kind", "KIND_CONTRADICTS_SPECIFICATION", kind + " with " + specification,
                    "for " + specification + ": " + possible.stream().map(Enum::name)
                            .collect(Collectors.joining(" or "))));
        }
    }
}
