package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** All that a plan is made from, in an order of its own, so that the same facts give the same plan however read. */
record PlanInput(LocalDate from, LocalDate through, List<Cylinder> cylinders, List<DrivenRoute> routes,
        Map<Rack, Integer> racks, ShopCapacity shop) {

    /**
     * A route with its visits from the first day of the plan through the last; {@code next} is the one after those, null
     * when none is known, {@code vehicle} null when it is not told.
     */
    record DrivenRoute(UUID id, int version, @Nullable UUID vehicle, List<LocalDate> visits,
            @Nullable LocalDate next, Set<UUID> stops) {

        DrivenRoute {
            visits = List.copyOf(visits);
            stops = Set.copyOf(stops);
        }
    }

    /** The places for a size on a vehicle. */
    record Rack(UUID vehicle, String size) implements Comparable<Rack> {

        private static final Comparator<Rack> ORDER = Comparator.comparing(Rack::vehicle).thenComparing(Rack::size);

        @Override
        public int compareTo(Rack other) {
            return ORDER.compare(this, other);
        }
    }

    /** How many the requalification shop takes in a week, with the weeks in which it is another number. */
    record ShopCapacity(int perWeek, SortedMap<IsoWeek, Integer> weeks) {

        ShopCapacity {
            weeks = new TreeMap<>(weeks);
        }

        int in(IsoWeek week) {
            return weeks.getOrDefault(week, perWeek);
        }
    }

    PlanInput {
        cylinders = cylinders.stream().sorted(Cylinder.BY_STOP).toList();
        routes = routes.stream().sorted(Comparator.comparing(DrivenRoute::id)).toList();
        racks = Map.copyOf(racks);
    }
}
