package org.collarbook.custody;

import java.time.YearMonth;
import java.util.UUID;

import org.collarbook.regulation.Extinguisher;
import org.jspecify.annotations.Nullable;

/** An extinguisher as it is found at a site; what is null is not known. */
public record NewExtinguisher(UUID siteId, String label, @Nullable Extinguisher type, @Nullable Integer ratingBC,
        @Nullable YearMonth manufactured) {}
