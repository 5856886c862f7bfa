package org.collarbook.dispatch;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.Caution;
import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

/**
 * What must come back before a date, by site: containers whose last day lies before it, and those out of service
 * whatever their date. {@code undetermined} counts the containers of the same sites whose due month cannot be told.
 */
record PullList(LocalDate before, List<Stop> sites, int count, List<SizeCount> sizes, long undetermined,
        String caution) {

    record Stop(UUID id, String code, String name, @Nullable String address, List<Pulled> containers,
            List<SizeCount> sizes) {}

    record Pulled(UUID id, String kind, String specification, @Nullable String maker, String serial, String size,
            @Nullable String tag, String status, String requirement, @Nullable YearMonth due,
            @Nullable LocalDate lastDay, Why reason) {}

    record Why(String code, String text, @Nullable String rule, @Nullable Citation citation) {}

    /** How many of a size to load in their place. */
    record SizeCount(String size, long count) {}

    static PullList of(LocalDate before, List<Pulled> pulled, List<PullRow> rows, long undetermined) {
        var stops = new LinkedHashMap<UUID, List<Integer>>();
        for (int i = 0; i < rows.size(); i++) {
            stops.computeIfAbsent(rows.get(i).siteId(), site -> new ArrayList<>()).add(i);
        }
        var sites = stops.values().stream().map(lines -> {
            var first = rows.get(lines.getFirst());
            var containers = lines.stream().map(pulled::get).toList();
            return new Stop(first.siteId(), first.siteCode(), first.siteName(), first.address(), containers,
                    sizes(containers));
        }).toList();
        return new PullList(before, sites, pulled.size(), sizes(pulled), undetermined, Caution.TEXT);
    }

    private static List<SizeCount> sizes(List<Pulled> containers) {
        Map<String, Long> counts = containers.stream()
                .collect(Collectors.groupingBy(Pulled::size, LinkedHashMap::new, Collectors.counting()));
        return counts.entrySet().stream().sorted(Map.Entry.comparingByKey())
                .map(entry -> new SizeCount(entry.getKey(), entry.getValue())).toList();
    }
}
