package org.collarbook.dispatch.plans;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;

/** How much more the shop and the racks would have to take so that nobody is left out, where it is missing. */
record ExtraCapacity(SortedMap<IsoWeek, Integer> shop, SortedMap<RackDay, Integer> racks) {

    static final ExtraCapacity NONE = new ExtraCapacity(new TreeMap<>(), new TreeMap<>());

    ExtraCapacity and(ExtraCapacity other) {
        return new ExtraCapacity(sum(List.of(shop, other.shop)), sum(List.of(racks, other.racks)));
    }

    int total() {
        return Stream.of(shop, racks).map(Map::values).flatMap(Collection::stream).mapToInt(Integer::intValue).sum();
    }

    private static <K> SortedMap<K, Integer> sum(List<SortedMap<K, Integer>> parts) {
        var sum = new HashMap<K, Integer>();
        parts.forEach(part -> part.forEach((key, more) -> sum.merge(key, more, Integer::sum)));
        return new TreeMap<>(sum);
    }
}
