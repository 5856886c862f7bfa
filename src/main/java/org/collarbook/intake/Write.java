package org.collarbook.intake;

import java.time.LocalDate;

import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.registry.NewContainer;
import org.collarbook.registry.RegisteredContainer;
import org.jspecify.annotations.Nullable;

/**
 * What one row brings into the register: a new container ({@code before} is null), other content, another site, a last
 * test or a fill that were not known.
 */
record Write(@Nullable RegisteredContainer before, NewContainer after, boolean isContentNew, @Nullable String toSite,
        @Nullable LastTest test, @Nullable LocalDate fill) {

    boolean isEmpty() {
        return before != null && !isContentNew && toSite == null && test == null && fill == null;
    }
}
