package org.collarbook.regulation;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Where a value stands. The edition is the one that was read; it may be older than the text in force today.
 */
public record Citation(String instrument, String section, String edition, LocalDate inForceFrom,
        @Nullable LocalDate published, String url, LocalDate retrieved, LocalDate lastConfirmed, Basis basis) {}
