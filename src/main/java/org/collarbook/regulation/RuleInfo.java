package org.collarbook.regulation;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A rule as it can be shown: its values by date, each with its citation. */
public record RuleInfo(String id, Jurisdiction jurisdiction, String topic, String title, List<DatedValue> values) {

    /** In force from {@code from}, until the day before {@code until}; {@code policy} when a caller must ask for it. */
    public record DatedValue(LocalDate from, @Nullable LocalDate until, @Nullable Policy policy, String value,
            Citation citation) {}
}
