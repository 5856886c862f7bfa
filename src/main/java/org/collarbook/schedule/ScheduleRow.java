package org.collarbook.schedule;

import java.time.LocalDate;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** One requirement of one container that falls due. */
record ScheduleRow(LocalDate due, LocalDate lastDay, String status, String requirement, @Nullable String jurisdiction,
        @Nullable String rule, UUID containerId, String kind, String specification, @Nullable String maker,
        String serial,
        @Nullable LocalDate manufactured, String size, @Nullable String tag, @Nullable String site,
        @Nullable String siteName, @Nullable String customer) {}
