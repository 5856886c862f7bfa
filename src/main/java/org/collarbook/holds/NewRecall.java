package org.collarbook.holds;

import java.time.Instant;
import java.time.YearMonth;

import org.collarbook.registry.MakerSymbol;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** What a recall names; null does not narrow it. The months are the first and the last of manufacture. */
public record NewRecall(MakerSymbol maker, @Nullable String lot, @Nullable Specification specification,
        @Nullable SerialRange serials, @Nullable YearMonth manufacturedFirst, @Nullable YearMonth manufacturedLast,
        String issuedBy, @Nullable String reference, Instant occurredAt) {}
