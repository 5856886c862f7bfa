package org.collarbook.custody;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** Gas put into a container on a day; the weight of an old fill may not be known. */
public record Fill(UUID containerId, LocalDate filledOn, @Nullable BigDecimal netLb) {}
