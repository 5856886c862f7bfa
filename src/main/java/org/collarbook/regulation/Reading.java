package org.collarbook.regulation;

import java.util.List;
import java.util.function.Function;

/** What a stamp says, with the text as it was read off. */
public sealed interface Reading<T> {

    String raw();

    record Read<T>(String raw, T value, List<String> warnings) implements Reading<T> {

        public Read {
            warnings = List.copyOf(warnings);
        }
    }

    /** More than one reading is possible, and nothing known decides between them. */
    record Ambiguous<T>(String raw, List<T> readings, String because) implements Reading<T> {

        public Ambiguous {
            readings = List.copyOf(readings);
        }
    }

    /** {@code index} counts the characters of the raw text. */
    record Unreadable<T>(String raw, Fault fault, int index, String found, String expected) implements Reading<T> {

        <R> Unreadable<R> as() {
            return new Unreadable<>(raw, fault, index, found, expected);
        }
    }

    enum Fault {
        /** It is not written as such a stamp is. */
        SHAPE,
        /** It is well written and lies after the day of reading. */
        IN_THE_FUTURE,
        /** It is well written and lies before the original test. */
        BEFORE_MANUFACTURE
    }

    /** The reading of a text that cannot be ambiguous. */
    static <T> Reading<T> of(String raw, ParseResult<T> result) {
        return switch (result) {
            case ParseResult.Parsed<T>(T value, List<String> warnings) -> new Read<>(raw, value, warnings);
            case ParseResult.Rejected<T>(int index, String found, String expected) -> new Unreadable<>(raw, Fault.SHAPE,
                    index, found, expected);
        };
    }

    default <R> Reading<R> map(Function<T, R> change) {
        return switch (this) {
            case Read<T>(String raw, T value, List<String> warnings) -> new Read<>(raw, change.apply(value), warnings);
            case Ambiguous<T>(String raw, List<T> readings, String because) -> new Ambiguous<>(raw, readings.stream()
                    .map(change).toList(), because);
            case Unreadable<T> unreadable -> unreadable.as();
        };
    }
}
