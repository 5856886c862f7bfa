package org.collarbook.platform;

import org.jspecify.annotations.Nullable;

/**
 * What is wrong with one input: where (JSON pointer, or the name of a query parameter or header), a stable code, what
 * was found and what is accepted instead.
 */
public record FieldError(String pointer, String code, @Nullable String found, String accepted) {

    private static final int LONGEST_ECHO = 80;

    public FieldError {
        found = found == null || found.length() <= LONGEST_ECHO
                ? found
                : found.substring(0, LONGEST_ECHO) + "… (" + found.length() + " characters)";
    }

    public static FieldError missing(String pointer, String accepted) {
        return new FieldError(pointer, "MISSING", null, accepted);
    }
}
