package org.collarbook.custody;

import java.time.Instant;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;

/** An extinguisher at a site, with what was done to it, the earliest first; {@code removedAt} when it is gone. */
public record StandingExtinguisher(UUID id, NewExtinguisher about, Instant recordedAt, @Nullable Instant removedAt,
        List<Done> records) {

    public record Done(YearMonth month, Method method, String by, Instant recordedAt) {}

    public StandingExtinguisher {
        records = List.copyOf(records);
    }
}
