package org.collarbook.custody;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** A container found empty, on that day where it stood. */
public record Emptying(UUID id, UUID containerId, Instant emptiedAt, LocalDate emptiedOn, @Nullable String how) {}
