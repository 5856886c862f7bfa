package org.collarbook.dispatch;

import java.time.LocalDate;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** One container that must come back, as read. */
record PullRow(UUID id, String kind, String specification, @Nullable String maker, String serial, String size,
        @Nullable String tag, String status, String requirement, @Nullable LocalDate due, @Nullable String rule,
        UUID siteId, String siteCode, String siteName, @Nullable String address) {}
