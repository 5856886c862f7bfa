package org.collarbook.schedule.forecast;

import java.util.List;
import java.util.UUID;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** A forecast as asked for, once it has been read. */
record Question(int years, List<Choice> methods, Fleet fleet, @Nullable Requirement requirement, Prices prices) {

    /** Which containers; a null leaves that side open. */
    record Fleet(@Nullable UUID site, @Nullable UUID customer, @Nullable UUID depot, @Nullable ContainerKind kind) {}
}
