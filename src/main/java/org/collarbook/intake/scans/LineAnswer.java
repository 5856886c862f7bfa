package org.collarbook.intake.scans;

import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.swaps.SwapAnswer;
import org.collarbook.platform.FieldError;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Reason;
import org.jspecify.annotations.Nullable;

/**
 * What became of a line: the facts that it recorded, or why it was refused. {@code first} is what became of a repeated
 * line at first; {@code moved} is false where another movement decides the place, {@code disputed} true where several
 * places claim the container now; {@code reasons} are why a fill or a swap was not allowed, {@code condemned} the month since which a 4E cylinder that was in a fire is. {@code pointer}, {@code found}
 * and {@code accepted} are those of the first of the {@code errors}.
 */
record LineAnswer(@Nullable String id, Outcome outcome, @Nullable Outcome first, @Nullable UUID containerId,
        @Nullable UUID movementId, @Nullable Boolean moved, @Nullable UUID sightingId, @Nullable Boolean disputed,
        @Nullable UUID emptyingId, @Nullable UUID fillId, @Nullable UUID holdId, @Nullable YearMonth condemned,
        @Nullable SwapAnswer swap, @Nullable List<Reason> reasons, @Nullable String code, @Nullable String detail,
        @Nullable String pointer, @Nullable String found, @Nullable String accepted,
        @Nullable List<FieldError> errors, @Nullable List<Citation> citations) {

    enum Outcome {
        RECORDED,
        /** A fill that was not allowed: it is a fact with its reasons, and the container is held; or such a swap. */
        RECORDED_NOT_ALLOWED,
        REPEATED,
        REFUSED
    }

    private static LineAnswer of(@Nullable String id, List<Reason> refusals, @Nullable UUID container,
            @Nullable UUID fill, @Nullable UUID hold, @Nullable YearMonth condemned, @Nullable SwapAnswer swap,
            @Nullable List<Citation> citations) {
        boolean mayFail = fill != null || swap != null;
        return new LineAnswer(id, refusals.isEmpty() ? Outcome.RECORDED : Outcome.RECORDED_NOT_ALLOWED, null, container,
                null, null, null, null, null, fill, hold, condemned, swap, mayFail ? refusals : null, null, null, null,
                null, null, null, citations);
    }

    static LineAnswer moved(@Nullable String id, UUID container, UUID movement, boolean moved, boolean disputed,
            @Nullable UUID emptying) {
        return new LineAnswer(id, Outcome.RECORDED, null, container, movement, moved, null, disputed, emptying, null,
                null, null, null, null, null, null, null, null, null, null, null);
    }

    static LineAnswer seen(@Nullable String id, UUID container, UUID sighting, boolean disputed) {
        return new LineAnswer(id, Outcome.RECORDED, null, container, null, null, sighting, disputed, null, null, null,
                null, null, null, null, null, null, null, null, null, null);
    }

    static LineAnswer swapped(@Nullable String id, SwapAnswer swap) {
        return of(id, swap.reasons(), null, null, null, null, swap, null);
    }

    static LineAnswer filled(@Nullable String id, UUID container, UUID fill, List<Reason> refusals,
            @Nullable UUID hold) {
        return of(id, refusals, container, fill, hold, null, null, null);
    }

    static LineAnswer held(@Nullable String id, UUID container, UUID hold) {
        return of(id, List.of(), container, null, hold, null, null, null);
    }

    static LineAnswer condemned(@Nullable String id, UUID container, YearMonth since, Citation citation) {
        return of(id, List.of(), container, null, null, since, null, List.of(citation));
    }

    /** The errors' pointers are into the batch. */
    static LineAnswer refused(@Nullable String id, String code, @Nullable String detail, List<FieldError> errors) {
        var first = errors.getFirst();
        return new LineAnswer(id, Outcome.REFUSED, null, null, null, null, null, null, null, null, null, null, null,
                null, code, detail, first.pointer(), first.found(), first.accepted(), errors, null);
    }
}
