package org.collarbook.intake;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.intake.Besides.GivenHold;
import org.collarbook.intake.Besides.GivenPart;
import org.collarbook.intake.Besides.GivenStop;
import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.NewContainer;
import org.collarbook.registry.RegisteredContainer;
import org.jspecify.annotations.Nullable;

/**
 * What one row brings into the register: a new container ({@code before} is null), other content, another site, tests, a
 * fill or something else that was not known. {@code declared}: its own declarations, each with the id that it has or gets.
 */
record Write(@Nullable RegisteredContainer before, NewContainer after, boolean isContentNew, @Nullable String toSite,
        List<LastTest> tests, @Nullable LocalDate fill, Extra extra, List<Declaration> declared) {

    /** What few rows bring. */
    record Extra(List<GivenHold> holds, List<GivenPartLine> parts, List<GivenStop> stops,
            @Nullable LocalDate emptied) {

        static final Extra NOTHING = new Extra(List.of(), List.of(), List.of(), null);

        boolean isEmpty() {
            return holds.isEmpty() && parts.isEmpty() && stops.isEmpty() && emptied == null;
        }
    }

    /** {@code known}: the part on record that was taken out; null is one that is new. */
    record GivenPartLine(GivenPart part, @Nullable UUID known) {}

    boolean isEmpty() {
        return before != null && !isContentNew && toSite == null && tests.isEmpty() && fill == null && extra.isEmpty();
    }
}
