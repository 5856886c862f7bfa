package org.collarbook.intake;

import java.time.LocalDate;
import java.util.List;

import org.collarbook.intake.LedgerEntry.LastTest;
import org.collarbook.registry.NewContainer;
import org.collarbook.registry.RegisteredContainer;
import org.jspecify.annotations.Nullable;

/**
 * What one row brings into the register: a new container ({@code before} is null), other content, another site, last
 * tests or a fill that were not known.
 */
record Write(@Nullable RegisteredContainer before, NewContainer after, boolean isContentNew, @Nullable String toSite,
        List<LastTest> tests, @Nullable LocalDate fill) {

    boolean isEmpty() {
        return before != null && !isContentNew && toSite == null && tests.isEmpty() && fill == null;
    }
}
