package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.dispatch.plans.PlanInput.DrivenRoute;
import org.collarbook.dispatch.plans.PlanInput.Rack;
import org.jspecify.annotations.Nullable;

/**
 * Sorts the cylinders: into chains those that some visit can pull, aside those that none can with the reason, and counts
 * those that a visit after the plan's last day still pulls in time.
 */
final class Chains {

    /** A cylinder that no visit of the plan pulls; the visits that could are null where there is none. */
    record LeftOver(Cylinder cylinder, WhyNot reason, @Nullable LocalDate firstVisit, @Nullable LocalDate lastVisit) {}

    private record Key(List<UUID> routes, String size) implements Comparable<Key> {

        private static final Comparator<Key> ORDER = Comparator.comparing((Key key) -> key.routes.toString())
                .thenComparing(Key::size);

        @Override
        public int compareTo(Key other) {
            return ORDER.compare(this, other);
        }
    }

    private final PlanInput input;
    private final Map<UUID, List<DrivenRoute>> callingAt = new HashMap<>();
    private final Map<Key, Chain> chains = new TreeMap<>();
    private final List<LeftOver> leftOver = new ArrayList<>();
    private int notNeeded;

    private Chains(PlanInput input) {
        this.input = input;
        input.routes().forEach(route -> route.stops()
                .forEach(site -> callingAt.computeIfAbsent(site, none -> new ArrayList<>()).add(route)));
    }

    static Chains of(PlanInput input) {
        var sorted = new Chains(input);
        input.cylinders().forEach(sorted::sort);
        return sorted;
    }

    List<Chain> chains() {
        return List.copyOf(chains.values());
    }

    List<LeftOver> leftOver() {
        return List.copyOf(leftOver);
    }

    int notNeeded() {
        return notNeeded;
    }

    private void sort(Cylinder one) {
        var site = one.site();
        var routes = site == null ? List.<DrivenRoute>of() : callingAt.getOrDefault(site, List.of());
        switch (one.standing()) {
            case UNDETERMINED -> leave(one, WhyNot.UNDETERMINED);
            case OTHER_AUTHORITY -> leave(one, WhyNot.OTHER_AUTHORITY);
            case OUT_OF_SERVICE -> chain(one, routes);
            case DUE -> {
                if (isPulledInTimeLater(one, routes)) {
                    notNeeded++;
                } else {
                    chain(one, routes);
                }
            }
        }
    }

    /**
     * Due after the plan's last day, and on or after the next visit that can pull it. Where no visit is known after the
     * plan, its last day alone tells.
     */
    private boolean isPulledInTimeLater(Cylinder one, List<DrivenRoute> routes) {
        var next = routes.stream().filter(route -> canPull(route, one.size())).map(DrivenRoute::next)
                .filter(Objects::nonNull).min(Comparator.naturalOrder());
        return one.dueDay().isAfter(input.through()) && next.map(visit -> !visit.isAfter(one.dueDay())).orElse(true);
    }

    private boolean canPull(DrivenRoute route, String size) {
        var vehicle = route.vehicle();
        return vehicle != null && input.racks().containsKey(new Rack(vehicle, size));
    }

    private void chain(Cylinder one, List<DrivenRoute> routes) {
        var key = new Key(routes.stream().map(DrivenRoute::id).toList(), one.size());
        var chain = chains.computeIfAbsent(key, none -> new Chain(one.size(), visits(routes, one.size()),
                new ArrayList<>(), new ArrayList<>(), new ArrayList<>()));
        if (chain.visits().isEmpty()) {
            leave(one, whyNone(one, routes));
        } else if (one.standing() == Cylinder.Standing.OUT_OF_SERVICE) {
            chain.outOfService().add(one);
        } else if (one.dueDay().isBefore(chain.visits().getFirst().day())) {
            chain.late().add(one);
        } else {
            chain.due().add(one);
        }
    }

    private List<Visit> visits(List<DrivenRoute> routes, String size) {
        var visits = new ArrayList<Visit>();
        for (var route : routes) {
            var vehicle = route.vehicle();
            if (vehicle != null && canPull(route, size)) {
                route.visits().forEach(day -> visits.add(new Visit(day, route.id(), vehicle)));
            }
        }
        return visits.stream().sorted().toList();
    }

    private WhyNot whyNone(Cylinder one, List<DrivenRoute> routes) {
        if (one.site() == null) {
            return WhyNot.PLACE_NOT_KNOWN;
        }
        if (routes.isEmpty()) {
            return WhyNot.NO_ROUTE;
        }
        var driven = routes.stream().filter(route -> !route.visits().isEmpty()).toList();
        if (driven.isEmpty()) {
            return WhyNot.NO_VISIT_IN_HORIZON;
        }
        return driven.stream().allMatch(route -> route.vehicle() == null) ? WhyNot.NO_VEHICLE : WhyNot.RACK_NOT_KNOWN;
    }

    private void leave(Cylinder one, WhyNot reason) {
        leftOver.add(new LeftOver(one, reason, null, null));
    }
}
