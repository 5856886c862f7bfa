package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * The cylinders of one size at the stops that the same routes call at, with the visits, in the order of time, that can
 * pull them: each has a vehicle whose rack for the size is known. A chain without visits has no cylinders.
 */
record Chain(String size, List<Visit> visits, List<Cylinder> outOfService, List<Cylinder> late, List<Cylinder> due) {

    /** Cylinders that are due alike; {@code deadline} is the last visit not after their last day. */
    record Group(LocalDate lastDay, int deadline, List<Cylinder> cylinders) {}

    List<Group> groups() {
        var byDay = new TreeMap<LocalDate, ArrayList<Cylinder>>();
        due.forEach(one -> byDay.computeIfAbsent(one.dueDay(), day -> new ArrayList<>()).add(one));
        return byDay.entrySet().stream()
                .map(entry -> new Group(entry.getKey(), deadline(entry.getKey()), entry.getValue())).toList();
    }

    /** The last visit not after the day; -1 when there is none. */
    int deadline(LocalDate day) {
        int low = 0;
        int high = visits.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (visits.get(middle).day().isAfter(day)) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low - 1;
    }

    RackDay rack(int visit) {
        return new RackDay(visits.get(visit).day(), visits.get(visit).vehicle(), size);
    }

    int daysBetween(int earlier, int later) {
        return Math.toIntExact(visits.get(later).day().toEpochDay() - visits.get(earlier).day().toEpochDay());
    }
}
