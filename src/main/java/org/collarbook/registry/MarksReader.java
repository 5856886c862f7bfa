package org.collarbook.registry;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.collarbook.platform.FieldError;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.Reading.Ambiguous;
import org.collarbook.regulation.Reading.Fault;
import org.collarbook.regulation.Reading.Read;
import org.collarbook.regulation.Reading.Unreadable;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampedMonth;
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
        var specification = value("/specification", Codes.SPECIFICATION,
                required("/specification", stamped.specification(), SPECIFICATION), always(Specification::tryParse));
        var serial = value("/serial", Codes.of("SERIAL"), required("/serial", stamped.serial(), Serial.EXPECTED),
                always(Serial::tryParse));
        var maker = value("/maker", Codes.of("MAKER"), stamped.maker(), always(MakerSymbol::tryParse));
        var collar = Collar.of(specification == null ? null : specification.value(), asOf);
        var manufactured = value("/manufactured", Codes.of("MONTH"), stamped.manufactured(),
                text -> StampedMonth.read(text, collar));
        var capacity = value("/waterCapacity", Codes.of("WATER_CAPACITY"), stamped.waterCapacity(),
                text -> Capacities.read(text, collar));
        var tare = value("/tare", Codes.of("TARE"), stamped.tare(), text -> Tare.read(text, collar));
        var pressure = value("/servicePressure", Codes.of("SERVICE_PRESSURE"), stamped.servicePressure(),
                always(ServicePressure::tryParse));
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

    private record Codes(String invalid, String ambiguous) {

        static final Codes SPECIFICATION = new Codes("UNKNOWN_SPECIFICATION", "AMBIGUOUS_SPECIFICATION");

        static Codes of(String noun) {
            return new Codes("INVALID_" + noun, "AMBIGUOUS_" + noun);
        }
    }

    private static <T> Function<String, Reading<T>> always(Function<String, ParseResult<T>> parser) {
        return text -> Reading.of(text, parser.apply(text));
    }

    private <T> @Nullable Stamped<T> value(String pointer, Codes codes, @Nullable String text,
            Function<String, Reading<T>> reader) {
        if (text == null || text.isBlank()) {
            return null;
        }
        if (text.length() > LONGEST) {
            refusals.add(new FieldError(pointer, codes.invalid, text, "at most " + LONGEST + " characters"));
            return null;
        }
        switch (reader.apply(text)) {
            case Read<T>(var raw, var value, var warnings) -> {
                warnings.forEach(warning -> remarks.add(new FieldError(pointer, "READ_WITH_A_DOUBT", raw, warning)));
                return new Stamped<>(value, raw);
            }
            case Ambiguous<T>(var raw, var readings, var because) -> {
                // without a specification the marks are refused in any case, and with one this may be clear
                if (!refusesSpecification()) {
                    refusals.add(new FieldError(pointer, codes.ambiguous, raw, "one of " + readings
                            + ", written so: " + because));
                }
            }
            case Unreadable<T>(var raw, var fault, int index, var found, var expected) -> refusals.add(
                    new FieldError(pointer, fault == Fault.IN_THE_FUTURE ? "IN_THE_FUTURE" : codes.invalid, raw,
                            expected + "; at character " + (index + 1) + " stands " + found));
        }
        return null;
    }

    private boolean refusesSpecification() {
        return refusals.stream().anyMatch(refusal -> refusal.pointer().equals("/specification"));
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
