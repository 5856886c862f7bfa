package org.collarbook.schedule;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * One requirement of one container that falls due. {@code owner}: {@link ScheduleFilter#OWN} or a name; null is not
 * known. {@code routes}: codes, a line each.
 */
record ScheduleRow(LocalDate due, LocalDate lastDay, String status, String requirement, @Nullable String jurisdiction,
        @Nullable String rule, UUID containerId, String kind, String specification, @Nullable String maker,
        String serial, @Nullable LocalDate manufactured, String size, @Nullable String tag, @Nullable String site,
        @Nullable String siteName, @Nullable String customer, @Nullable String owner, @Nullable String routes) {

    @Nullable
    YearMonth manufacturedIn() {
        return manufactured == null ? null : YearMonth.from(manufactured);
    }

    List<String> routeCodes() {
        return routes == null ? List.of() : routes.lines().toList();
    }
}
