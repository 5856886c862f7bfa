package org.collarbook.intake;

import java.util.Arrays;
import java.util.Locale;

import org.jspecify.annotations.Nullable;

/** Constants as a ledger writes them: in any case, their parts apart by spaces, hyphens or underscores. */
final class Constants {

    private Constants() {}

    static String name(String text) {
        return text.toUpperCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
    }

    /** Null where the text is no name of one. */
    static <E extends Enum<E>> @Nullable E of(@Nullable String text, Class<E> constants) {
        var name = text == null ? null : name(text);
        return Arrays.stream(constants.getEnumConstants()).filter(one -> one.name().equals(name)).findFirst()
                .orElse(null);
    }

    /** As it is written. */
    static String word(Enum<?> constant) {
        return word(constant.name());
    }

    static String word(String name) {
        return name.toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
