package org.collarbook.access;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

import org.jspecify.annotations.Nullable;

/** What a caller does for a living. */
public enum Role {
    FILLER,
    DISPATCHER,
    YARD,
    CLERK,
    PORTAL,
    ADMINISTRATOR;

    /** As written in requests, answers and the database. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** None where the word is no role. */
    static Optional<Role> of(@Nullable String word) {
        return Arrays.stream(values()).filter(role -> role.word().equals(lower(word))).findFirst();
    }

    private static @Nullable String lower(@Nullable String word) {
        return word == null ? null : word.toLowerCase(Locale.ROOT);
    }
}
