package org.collarbook.dispatch.plans;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.dispatch.plans.PlanInput.ShopCapacity;
import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A plan as asked for; {@code from} is today and {@code months} 18 when absent, {@code depot} absent means all routes. */
@Schema(name = "PullPlanRequest", requiredProperties = "shop")
record PlanRequest(@Nullable LocalDate from, @Nullable BigDecimal months, @Nullable UUID depot, @Nullable Shop shop) {

    private static final int MOST_A_WEEK = 1_000_000;
    private static final int MOST_WEEKS = 600;
    private static final int YEARS_AHEAD = 5;
    private static final String HOW_MANY = "how many cylinders it takes, a whole number of 0 to " + MOST_A_WEEK;

    /** How many the requalification shop takes in a week, and single weeks in which it is another number. */
    @Schema(name = "PullPlanShopRequest")
    record Shop(@Nullable BigDecimal perWeek, @Nullable List<@Nullable Week> weeks) {}

    @Schema(name = "PullPlanShopWeekRequest")
    record Week(@Nullable String week, @Nullable BigDecimal capacity) {}

    Asked read(Depots depots) {
        var inputs = new Inputs();
        var today = depots.today(depot);
        if (today == null) {
            inputs.refuse("/depot", "UNKNOWN_DEPOT", String.valueOf(depot), "the id of a site of the kind DEPOT");
        } else {
            refuseAbsurd(today, inputs);
        }
        var readMonths = months == null
                ? Integer.valueOf(Asked.USUAL_MONTHS)
                : whole("/months", months, 1, Asked.MOST_MONTHS, "1 to " + Asked.MOST_MONTHS + " months", inputs);
        var given = inputs.present("/shop", shop, "{\"perWeek\": …}: " + HOW_MANY);
        var perWeek = given == null ? null : capacity("/shop/perWeek", given.perWeek, inputs);
        var weeks = given == null ? new TreeMap<IsoWeek, Integer>() : weeks(given.weeks, inputs);
        inputs.done();
        if (today == null || perWeek == null || readMonths == null) {
            throw new IllegalStateException("a plan was neither read nor refused");
        }
        return new Asked(from == null ? today : from, readMonths, depot, new ShopCapacity(perWeek, weeks));
    }

    private void refuseAbsurd(LocalDate today, Inputs inputs) {
        if (from != null && (from.isBefore(today) || from.isAfter(today.plusYears(YEARS_AHEAD)))) {
            inputs.refuse("/from", "OUT_OF_RANGE", from.toString(), "a day from " + today + " on, at most "
                    + YEARS_AHEAD + " years ahead");
        }
    }

    private static @Nullable Integer capacity(String pointer, @Nullable BigDecimal given, Inputs inputs) {
        var capacity = inputs.present(pointer, given, HOW_MANY);
        return capacity == null ? null : whole(pointer, capacity, 0, MOST_A_WEEK, HOW_MANY, inputs);
    }

    /** Taken for an integer by the reader, half a cylinder would be cut off without a word. */
    private static @Nullable Integer whole(String pointer, BigDecimal given, int least, int most, String accepted,
            Inputs inputs) {
        if (given.compareTo(BigDecimal.valueOf(least)) < 0 || given.compareTo(BigDecimal.valueOf(most)) > 0
                || given.stripTrailingZeros().scale() > 0) {
            inputs.refuse(pointer, "OUT_OF_RANGE", given.toString(), accepted);
            return null;
        }
        return given.intValueExact();
    }

    private static SortedMap<IsoWeek, Integer> weeks(@Nullable List<@Nullable Week> given, Inputs inputs) {
        var weeks = new TreeMap<IsoWeek, Integer>();
        if (given == null) {
            return weeks;
        }
        if (given.size() > MOST_WEEKS) {
            inputs.refuse("/shop/weeks", "TOO_MANY", given.size() + " weeks", "at most " + MOST_WEEKS + " weeks");
            return weeks;
        }
        for (int i = 0; i < given.size(); i++) {
            var pointer = "/shop/weeks/" + i;
            var one = inputs.present(pointer, given.get(i), "a week and its capacity");
            if (one != null) {
                week(pointer, one, weeks, inputs);
            }
        }
        return weeks;
    }

    private static void week(String pointer, Week given, SortedMap<IsoWeek, Integer> weeks, Inputs inputs) {
        var capacity = capacity(pointer + "/capacity", given.capacity, inputs);
        var text = inputs.present(pointer + "/week", given.week, IsoWeek.ACCEPTED);
        var week = text == null ? null : IsoWeek.tryParse(text).orElse(null);
        if (text != null && week == null) {
            inputs.refuse(pointer + "/week", "INVALID_WEEK", text, IsoWeek.ACCEPTED);
        } else if (week != null && weeks.put(week, capacity == null ? 0 : capacity) != null) {
            inputs.refuse(pointer + "/week", "TOLD_TWICE", text, "each week once");
        }
    }
}
