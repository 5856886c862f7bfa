package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.dispatch.plans.PlanInput.ShopCapacity;
import org.jspecify.annotations.Nullable;

/** What a plan is asked for: its first day, how many months, the routes of a depot or all, and what the shop takes. */
record Asked(LocalDate from, int months, @Nullable UUID depot, ShopCapacity shop) {

    static final int MOST_MONTHS = 60;
    static final int USUAL_MONTHS = 18;

    LocalDate through() {
        return from.plusMonths(months).minusDays(1);
    }
}
