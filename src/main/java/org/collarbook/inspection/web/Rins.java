package org.collarbook.inspection.web;

import org.collarbook.inspection.bench.Refusals;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Rin;
import org.jspecify.annotations.Nullable;

/** A RIN in a request. */
final class Rins {

    static final String ACCEPTED = "a letter and three digits, such as A123";

    private Rins() {}

    /** Null when none is given, or when it is refused. */
    static @Nullable Rin read(String pointer, @Nullable String given, Refusals refusals) {
        if (given == null || given.isBlank()) {
            return null;
        }
        return switch (Rin.tryParse(given)) {
            case Parsed<Rin>(var rin, var _) -> rin;
            case Rejected<Rin> _ -> {
                refusals.refuse(pointer, "INVALID_RIN", given, ACCEPTED);
                yield null;
            }
        };
    }
}
