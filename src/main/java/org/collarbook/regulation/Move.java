package org.collarbook.regulation;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/** A move by road that is asked about: how full the container is, in percent of its volume, and what the move is for. */
public record Move(@Nullable BigDecimal percentFull, @Nullable Purpose purpose) {}
