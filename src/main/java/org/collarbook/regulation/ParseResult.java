package org.collarbook.regulation;

import java.util.List;

/** What reading a text gave: the value, or where it stopped making sense. */
public sealed interface ParseResult<T> {

    record Parsed<T>(T value, List<String> warnings) implements ParseResult<T> {}

    record Rejected<T>(int index, String found, String expected) implements ParseResult<T> {}

    static <T> ParseResult<T> parsed(T value) {
        return new Parsed<>(value, List.of());
    }

    static <T> Rejected<T> rejectedAt(String text, int index, String expected) {
        String rest = index >= text.length()
                ? "end of text"
                : text.substring(index, Math.min(text.length(), index + 20));
        return new Rejected<>(index, rest, expected);
    }

    default T orElseThrow(String what, String text) {
        return switch (this) {
            case Parsed<T>(T value, List<String> _) -> value;
            case Rejected<T>(int index, String found, String expected) -> throw new IllegalArgumentException(
                    what + " '" + text + "': at index " + index + " found '" + found + "', expected " + expected);
        };
    }
}
