package org.collarbook.regulation;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * A rule as it can be shown: what it applies to in its own words, its values by date, each with its citation, and its
 * examples. {@code topic} is the requirement it sets, the question it asks, or what else it does.
 */
public record RuleInfo(String id, Jurisdiction jurisdiction, String topic, String title, @Nullable String note,
        int precedence, String selectedBy, Map<String, Object> applies, List<DatedValue> values,
        List<Example> examples) {

    /**
     * In force from {@code from}, until the day before {@code until}; {@code policy} when a caller must ask for it;
     * {@code unread} names a later amendment that is known and was not read.
     */
    public record DatedValue(LocalDate from, @Nullable LocalDate until, @Nullable Policy policy, String value,
            boolean onByDefault, @Nullable String unread, Citation citation) {

        public boolean inForceOn(LocalDate day) {
            return !day.isBefore(from) && (until == null || day.isBefore(until));
        }
    }

    /** A case that the rule decides, and what it gives; or one that it leaves to others, giving nothing. */
    public record Example(boolean matching, LocalDate asOf, Map<String, Object> facts, @Nullable String gives) {}
}
