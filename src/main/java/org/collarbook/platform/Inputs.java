package org.collarbook.platform;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;

/** Gathers everything that is wrong with a request, so that the caller learns it at once. */
public final class Inputs {

    private final List<FieldError> errors = new ArrayList<>();

    public void refuse(String pointer, String code, @Nullable String found, String accepted) {
        errors.add(new FieldError(pointer, code, found, accepted));
    }

    public void refuse(Collection<FieldError> more) {
        errors.addAll(more);
    }

    /** What was given, or null and a note that it is missing. */
    public <T> @Nullable T present(String pointer, @Nullable T given, String accepted) {
        if (given == null) {
            errors.add(FieldError.missing(pointer, accepted));
        }
        return given;
    }

    /** A text of 1 to {@code longest} printable characters, without the spaces around it. */
    public @Nullable String required(String pointer, @Nullable String given, int longest) {
        if (given == null || given.isBlank()) {
            errors.add(new FieldError(pointer, "MISSING", given, accepted(longest)));
            return null;
        }
        return optional(pointer, given, longest);
    }

    /** The same; null and blank are both "not known". */
    public @Nullable String optional(String pointer, @Nullable String given, int longest) {
        if (given == null || given.isBlank()) {
            return null;
        }
        var text = given.strip();
        if (text.length() > longest || !isPlain(text)) {
            errors.add(new FieldError(pointer, "INVALID_TEXT", given, accepted(longest)));
            return null;
        }
        return text;
    }

    /** One of the words of an enumeration. */
    public <E extends Enum<E>> @Nullable E word(String pointer, @Nullable String given, Class<E> words) {
        if (given == null || given.isBlank()) {
            return null;
        }
        try {
            return Enum.valueOf(words, given.strip().toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException unknown) {
            errors.add(new FieldError(pointer, "UNKNOWN_WORD", given, "one of "
                    + Arrays.stream(words.getEnumConstants()).map(Enum::name).collect(Collectors.joining(", "))));
            return null;
        }
    }

    public boolean areRefused() {
        return !errors.isEmpty();
    }

    public List<FieldError> errors() {
        return List.copyOf(errors);
    }

    /** Throws the problem answer when anything was refused. */
    public void done() {
        if (areRefused()) {
            throw Problem.invalid(errors).asException();
        }
    }

    private static String accepted(int longest) {
        return "1 to " + longest + " printable characters";
    }

    /** Neither control characters nor halves of characters, which the database cannot keep. */
    private static boolean isPlain(String text) {
        return text.codePoints().noneMatch(c -> Character.isISOControl(c)
                || Character.getType(c) == Character.SURROGATE);
    }
}
