package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.custody.Place;
import org.jspecify.annotations.Nullable;

/**
 * What is asked about, with its calls in the order in which they are listed. {@code depot}: where all of it is loaded,
 * {@code vehicle}: onto what; null where that is not one. {@code everyStop}: whether a stop with nothing on it is told.
 */
record Round(PullList.Asked asked, List<Call> calls, @Nullable Place depot, @Nullable UUID vehicle, boolean everyStop) {

    static final Comparator<Call> BY_ROUTE = Comparator
            .comparing(Call::route, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(Call::position, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(call -> call.site().name()).thenComparing(call -> call.site().siteId());

    /** The day through which what is loaded should last, or the one given where no visit is known. */
    LocalDate lasting(LocalDate otherwise) {
        return calls.stream().map(Call::lasting).filter(Objects::nonNull).max(Comparator.naturalOrder())
                .orElse(otherwise);
    }
}
