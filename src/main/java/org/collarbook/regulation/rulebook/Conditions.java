package org.collarbook.regulation.rulebook;

import java.math.BigDecimal;
import java.time.Period;
import java.time.YearMonth;
import java.util.Collection;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** Whether two rules' conditions can never hold together; what is not seen to exclude is taken to meet. */
final class Conditions {

    private static final List<String> FLAGS = List.of("exclusive", "corrosionFree", "coated", "lined", "star",
            "composite", "permitInForce", "certificateInForce", "recordedFire", "condemned",
            "overfillPrevention", "overfillPreventionRecorded");
    private static final List<List<String>> WORDS = List.of(List.of("lading", "statedLading"), List.of("use",
            "statedUse"), List.of("steel"), List.of("installation"), List.of("reliefValve"), List.of("extinguisher"),
            List.of("statedExtension"), List.of("markMethod"));

    private Conditions() {}

    static boolean exclude(Map<String, Object> one, Map<String, Object> other) {
        return FLAGS.stream().anyMatch(key -> one.containsKey(key) && other.containsKey(key)
                && !one.get(key).equals(other.get(key)))
                || WORDS.stream().anyMatch(keys -> apart(words(one, keys), words(other, keys)))
                || without(one, other) || without(other, one) || below(one, other) || below(other, one);
    }

    private static @Nullable Set<String> words(Map<String, Object> applies, List<String> keys) {
        return keys.stream().filter(applies::containsKey).findFirst().map(key -> set(applies.get(key))).orElse(null);
    }

    private static Set<String> set(@Nullable Object value) {
        Set<String> set = new HashSet<>();
        if (value instanceof Collection<?> list) {
            list.forEach(item -> set.add(String.valueOf(item)));
        } else if (value != null) {
            set.add(String.valueOf(value));
        }
        return set;
    }

    private static boolean apart(@Nullable Set<String> one, @Nullable Set<String> other) {
        return one != null && other != null && Collections.disjoint(one, other);
    }

    /** All that one is for is what the other is not for. */
    private static boolean without(Map<String, Object> one, Map<String, Object> other) {
        Set<String> ladings = words(one, List.of("lading", "statedLading"));
        return ladings != null && List.of("ladingNot", "statedLadingNot").stream()
                .anyMatch(key -> other.containsKey(key) && set(other.get(key)).containsAll(ladings));
    }

    private static boolean below(Map<String, Object> low, Map<String, Object> high) {
        return below(pounds(low, "waterCapacityUnder", "waterCapacityAtMost"),
                pounds(high, "waterCapacityAtLeast", "waterCapacityOver"),
                low.containsKey("waterCapacityUnder") || high.containsKey("waterCapacityOver"))
                || below(months(low.get("markAgeUnder")), months(high.get("markAgeAtLeast")), true)
                || below(month(low.get("madeBefore")), month(high.get("madeFrom")), true);
    }

    private static <T extends Comparable<T>> boolean below(@Nullable T upper, @Nullable T lower, boolean evenEqual) {
        return upper != null && lower != null && (evenEqual
                ? upper.compareTo(lower) <= 0
                : upper.compareTo(lower) < 0);
    }

    private static @Nullable BigDecimal pounds(Map<String, Object> applies, String... keys) {
        for (String key : keys) {
            if (applies.containsKey(key)) {
                return WaterCapacity.parse(String.valueOf(applies.get(key))).toPounds();
            }
        }
        return null;
    }

    private static @Nullable Integer months(@Nullable Object text) {
        return text == null ? null : (int) Period.parse(text.toString()).toTotalMonths();
    }

    private static @Nullable YearMonth month(@Nullable Object text) {
        return text == null ? null : YearMonth.parse(text.toString());
    }
}
