package org.collarbook.registry.stamps;

import org.collarbook.regulation.Reading;
import org.jspecify.annotations.Nullable;

/** One line, counted from 1, with what it was taken for; {@code kind} is null where that is open. */
public record StampLine(int number, @Nullable StampKind kind, Reading<Stamp> reading) {}
