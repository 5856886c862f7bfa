package org.collarbook.regulation;

import java.time.YearMonth;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is known of one extinguisher at a site; null is unknown. {@code ratingBC} is the number before B:C; null records
 * are an unknown history, an empty list is a tag that was read and tells of nothing done.
 */
public record SiteExtinguisher(@Nullable Extinguisher type, @Nullable YearMonth manufactured,
        @Nullable Integer ratingBC, @Nullable List<Requalification> records) {

    public SiteExtinguisher {
        records = records == null ? null : List.copyOf(records);
    }
}
