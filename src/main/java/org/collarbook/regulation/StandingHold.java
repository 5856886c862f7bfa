package org.collarbook.regulation;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A hold that has not been lifted; a null day counts as placed already. */
public record StandingHold(String reason, @Nullable LocalDate placedOn) {}
