package org.collarbook.dispatch;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.collarbook.platform.Caution;
import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

/**
 * What must come back before a date, by site: containers whose last day lies before it, be it of their due month or of
 * their service life, and those out of service whatever their date. {@code undetermined} counts the containers of the same sites whose due month cannot be told.
 */
record PullList(LocalDate before, List<Stop> sites, int count, List<SizeCount> sizes, long undetermined,
        String caution) {

    record Stop(UUID id, String code, String name, @Nullable String address, List<Pulled> containers,
            List<SizeCount> sizes) {}

    record Pulled(UUID id, String kind, String specification, @Nullable String maker, String serial, String size,
            @Nullable String tag, String status, String requirement,
            @Nullable String jurisdiction, @Nullable YearMonth due,
            @Nullable LocalDate lastDay, Why reason) {}

    record Why(String code, String text, @Nullable String rule, @Nullable Citation citation) {}

    /** How many of a size to load in their place. */
    record SizeCount(String size, long count) {}

    static PullList of(LocalDate before, List<PullRow> rows, Function<PullRow, Pulled> pulled, long undetermined) {
        var stops = rows.stream()
                .collect(Collectors.groupingBy(PullRow::siteId, LinkedHashMap::new, Collectors.toList())).values()
                .stream().map(stop -> stop(stop, pulled)).toList();
        var all = stops.stream().flatMap(stop -> stop.containers.stream()).toList();
        return new PullList(before, stops, all.size(), sizes(all), undetermined, Caution.TEXT);
    }

    private static Stop stop(List<PullRow> rows, Function<PullRow, Pulled> pulled) {
        var first = rows.getFirst();
        var containers = rows.stream().map(pulled).toList();
        return new Stop(first.siteId(), first.siteCode(), first.siteName(), first.address(), containers,
                sizes(containers));
    }

    private static List<SizeCount> sizes(List<Pulled> containers) {
        Map<String, Long> counts = containers.stream()
                .collect(Collectors.groupingBy(Pulled::size, LinkedHashMap::new, Collectors.counting()));
        return counts.entrySet().stream().sorted(Map.Entry.comparingByKey())
                .map(entry -> new SizeCount(entry.getKey(), entry.getValue())).toList();
    }
}
