package org.collarbook.schedule;

import java.time.Instant;
import java.time.LocalDate;

import org.jspecify.annotations.Nullable;

/** A schedule of another day, or as it was known at another moment. Where no day is told it is today's at each site. */
record Replay(@Nullable LocalDate asOf, Instant knownAt) {}
