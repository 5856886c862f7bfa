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
        return new Rejected<>(index, index >= text.length() ? "end of text" : rest(text, index), expected);
    }

    /** Cut short, but never between the halves of a character. */
    private static String rest(String text, int index) {
        int end = Math.min(text.length(), index + 20);
        return text.substring(index, end < text.length() && Character.isHighSurrogate(text.charAt(end - 1))
                ? end - 1
                : end);
    }

    default T orElseThrow(String what, String text) {
        return switch (this) {
            case Parsed<T>(T value, List<String> _) -> value;
            case Rejected<T>(int index, String found, String expected) -> throw new IllegalArgumentException(
                    what + " '" + text + "': at index " + index + " found '" + found + "', expected " + expected);
        };
    }
}
