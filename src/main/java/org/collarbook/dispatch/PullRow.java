package org.collarbook.dispatch;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/**
 * One container that must come back, as read. {@code leavesOn}: the day, not after the one asked about, on which it goes
 * out of service by date alone, {@code leavesAs} that status.
 */
record PullRow(UUID id, String kind, String specification, @Nullable String maker, String serial, String size,
        @Nullable String tag, String status, String requirement, @Nullable String jurisdiction,
        @Nullable LocalDate due, @Nullable LocalDate leavesOn, @Nullable String leavesAs, @Nullable String rule,
        UUID siteId, String siteCode, String siteName, @Nullable String address) {

    @Nullable
    YearMonth dueMonth() {
        return due == null ? null : YearMonth.from(due);
    }

    /** That of its due month, or the one before it goes out of service. */
    @Nullable
    LocalDate lastDay() {
        var month = dueMonth();
        return month == null || leavesBeforeItIsDue()
                ? leavesOn == null ? null : leavesOn.minusDays(1)
                : month.atEndOfMonth();
    }

    boolean leavesBeforeItIsDue() {
        var month = dueMonth();
        return leavesOn != null && (month == null || !leavesOn.isAfter(month.atEndOfMonth()));
    }
}
