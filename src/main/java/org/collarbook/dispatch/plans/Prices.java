package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * What a flow pays, in whole numbers. A day of remaining life thrown away costs 1. A day by which a late one comes later
 * than the first visit costs more than throwing away all of another one's life; leaving one out costs more than everything that can be
 * thrown away together, and twice that where it is late. So as few as possible are left out, then as few late ones, and
 * only then the days count.
 */
record Prices(long lateDay, long leftOut, long leftOutLate) {

    static Prices of(PlanInput input, List<Chain> chains) {
        var farthest = Stream.concat(Stream.of(input.through()),
                chains.stream().flatMap(chain -> chain.due().stream()).map(Cylinder::dueDay))
                .max(Comparator.naturalOrder()).map(LocalDate::toEpochDay).orElseThrow();
        long days = farthest - input.from().toEpochDay() + 1;
        long due = 0;
        long late = 0;
        for (var chain : chains) {
            due += chain.due().size();
            late += chain.late().size() + chain.outOfService().size();
        }
        long all = Math.addExact(Math.multiplyExact(due, days), Math.multiplyExact(late, days * days));
        return new Prices(days, all + 1, 2 * (all + 1));
    }
}
