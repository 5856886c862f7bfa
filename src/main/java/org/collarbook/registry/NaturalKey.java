package org.collarbook.registry;

import java.time.YearMonth;

import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** What tells one container from all others by its marks alone; what is not known counts as a value of its own. */
public record NaturalKey(MarkScheme scheme, Specification specification, @Nullable MakerSymbol maker, Serial serial,
        @Nullable YearMonth manufactured) {}
