package org.collarbook.registry.stamps;

import java.util.regex.Pattern;

import org.jspecify.annotations.Nullable;

/** The letters beside a date: the inspector's mark, or that of country and body; 49 CFR 178.35(f), UN 6.2.2.7.7. */
final class Inspector {

    private static final Pattern BEFORE = Pattern.compile("([A-Z]{1,3}(?: [A-Z]{1,3})?) \\d.*");
    private static final Pattern BETWEEN = Pattern.compile("\\d{1,2}[-/. ]([A-Z]{1,3})[-/. ]\\d.*");

    private Inspector() {}

    static @Nullable String of(String capitals) {
        var before = BEFORE.matcher(capitals);
        var between = BETWEEN.matcher(capitals);
        return before.matches() ? before.group(1) : between.matches() ? between.group(1) : null;
    }
}
