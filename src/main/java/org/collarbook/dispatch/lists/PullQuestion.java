package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.util.Objects;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

/** What the dispatcher asks for, as query parameters. */
record PullQuestion(@Nullable String site, @Nullable String customer, @Nullable String near, @Nullable String depot,
        @Nullable LocalDate before, @Nullable LocalDate visit) {

    private static final LocalDate FIRST = LocalDate.of(2000, 1, 1);
    private static final LocalDate LAST = LocalDate.of(2199, 12, 31);

    /** Refuses by problem all that is wrong with it. */
    PullArea area() {
        var wrong = new Inputs();
        var area = PullArea.of(this, wrong);
        refuseFarOff(wrong, "before", before);
        refuseFarOff(wrong, "visit", visit);
        if (visit != null && before != null) {
            wrong.refuse("visit", "TOO_MANY", visit.toString(), "a visit or before, not both");
        } else if (visit != null && depot == null) {
            wrong.refuse("visit", "WITHOUT_DEPOT", visit.toString(), "a visit together with a depot");
        }
        wrong.done();
        return Objects.requireNonNull(area);
    }

    /** Neither the calendar nor the database is asked about days that nobody plans for. */
    static void refuseFarOff(Inputs wrong, String pointer, @Nullable LocalDate day) {
        if (day != null && (day.isBefore(FIRST) || day.isAfter(LAST))) {
            wrong.refuse(pointer, "OUT_OF_RANGE", day.toString(), "a day from " + FIRST + " to " + LAST);
        }
    }
}
