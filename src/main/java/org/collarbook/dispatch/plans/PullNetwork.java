package org.collarbook.dispatch.plans;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

import org.collarbook.dispatch.plans.PlanInput.ShopCapacity;
import org.jspecify.annotations.Nullable;

/**
 * Visits, racks and weeks as a network. A cylinder enters a chain at the last visit before its date and may go back from
 * visit to visit, at a cost of the days between them; a late one enters at the first and may go on. From a visit it goes to the
 * rack of the vehicle, from there into the week of the shop, and out. Racks that one chain alone uses are an arc, others a
 * node. What finds no way goes out beside, dearly, or over capacity that there is not, where that is asked about.
 */
final class PullNetwork {

    /** The arcs of some cylinders of a chain: one a visit, and one a group for those left out. */
    record Strand(Chain chain, int[] pulls, int[] leaves) {}

    private final Network network = new Network();
    private final FreePlaces places;
    private final @Nullable ShopCapacity shop;
    private final Prices prices;
    private final boolean extra;
    private final int out = network.node();
    private final Map<RackDay, Integer> racks = new HashMap<>();
    private final Map<IsoWeek, Integer> weeks = new HashMap<>();
    private final SortedMap<RackDay, Integer> extraRacks = new TreeMap<>();
    private final SortedMap<IsoWeek, Integer> extraWeeks = new TreeMap<>();
    private final Set<RackDay> shared = new HashSet<>();

    /**
     * @param shop null where what is pulled does not go there
     * @param extra whether all must be pulled, with as little capacity besides as that takes
     */
    PullNetwork(FreePlaces places, @Nullable ShopCapacity shop, Prices prices, boolean extra) {
        this.places = places;
        this.shop = shop;
        this.prices = prices;
        this.extra = extra;
    }

    /** Told before the strands are made: whose visits use a rack twice. */
    void share(List<Chain> strands) {
        var seen = new HashSet<RackDay>();
        for (var chain : strands) {
            for (int visit = 0; visit < chain.visits().size(); visit++) {
                var rack = chain.rack(visit);
                if (!seen.add(rack)) {
                    shared.add(rack);
                }
            }
        }
    }

    /** Those that come at the first visit, or as soon after it as they can. */
    Strand onward(Chain chain, int count) {
        int[] visits = visits(chain.visits().size());
        int[] pulls = new int[visits.length];
        for (int visit = 0; visit < visits.length; visit++) {
            pulls[visit] = pull(chain, visit, visits[visit], count);
            if (visit > 0) {
                network.arc(visits[visit - 1], visits[visit], count,
                        chain.daysBetween(visit - 1, visit) * prices.lateDay());
            }
        }
        return new Strand(chain, pulls, new int[]{enter(visits[0], count, prices.leftOutLate())});
    }

    /** Those that come at the last visit before their date, or as late before it as they can. */
    Strand back(Chain chain, List<Chain.Group> groups) {
        int[] visits = visits(groups.getLast().deadline() + 1);
        int[] pulls = new int[visits.length];
        int[] leaves = new int[groups.size()];
        int count = 0;
        int group = groups.size() - 1;
        for (int visit = visits.length - 1; visit >= 0; visit--) {
            for (; group >= 0 && groups.get(group).deadline() == visit; group--) {
                var entering = groups.get(group);
                long spared = entering.lastDay().toEpochDay() - chain.visits().get(visit).day().toEpochDay();
                leaves[group] = enter(visits[visit], entering.cylinders().size(), prices.leftOut() - spared);
                count += entering.cylinders().size();
            }
            pulls[visit] = pull(chain, visit, visits[visit], count);
            if (visit > 0) {
                network.arc(visits[visit], visits[visit - 1], count, chain.daysBetween(visit - 1, visit));
            }
        }
        return new Strand(chain, pulls, leaves);
    }

    private int[] visits(int count) {
        var nodes = new int[count];
        for (int visit = 0; visit < count; visit++) {
            nodes[visit] = network.node();
        }
        return nodes;
    }

    private int enter(int node, int count, long leftOut) {
        network.supply(node, count);
        network.supply(out, -count);
        return extra ? -1 : network.arc(node, out, count, leftOut);
    }

    private int pull(Chain chain, int visit, int node, int count) {
        var rack = chain.rack(visit);
        if (!shared.contains(rack)) {
            return load(rack, node);
        }
        var known = racks.get(rack);
        int loading = known == null ? network.node() : known;
        if (known == null) {
            racks.put(rack, loading);
            load(rack, loading);
        }
        return network.arc(node, loading, count, 0);
    }

    private int load(RackDay rack, int node) {
        int week = shop == null ? out : week(shop, IsoWeek.of(rack.day()));
        int arc = network.arc(node, week, places.at(rack), 0);
        if (extra) {
            extraRacks.put(rack, network.arc(node, week, Integer.MAX_VALUE, prices.leftOut()));
        }
        return arc;
    }

    private int week(ShopCapacity capacity, IsoWeek week) {
        return weeks.computeIfAbsent(week, none -> {
            int node = network.node();
            network.arc(node, out, capacity.in(week), 0);
            if (extra) {
                extraWeeks.put(week, network.arc(node, out, Integer.MAX_VALUE, prices.leftOut()));
            }
            return node;
        });
    }

    Network network() {
        return network;
    }

    /** Proved to be the least before it is told. */
    ExtraCapacity extra(CheapestFlow flow) {
        if (flow.gap(network) != 0) {
            throw new IllegalStateException("the capacity that is missing may be less by " + flow.gap(network));
        }
        return new ExtraCapacity(carrying(extraWeeks, flow), carrying(extraRacks, flow));
    }

    private static <K> SortedMap<K, Integer> carrying(SortedMap<K, Integer> arcs, CheapestFlow flow) {
        var carried = new TreeMap<K, Integer>(arcs.comparator());
        arcs.forEach((key, arc) -> {
            if (flow.flows()[arc] > 0) {
                carried.put(key, Math.toIntExact(flow.flows()[arc]));
            }
        });
        return carried;
    }

}
