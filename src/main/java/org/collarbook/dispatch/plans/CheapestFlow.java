package org.collarbook.dispatch.plans;

import com.google.ortools.Loader;
import com.google.ortools.graph.MinCostFlow;
import com.google.ortools.graph.MinCostFlowBase.Status;

/** The cheapest flow through a network, found by OR-Tools and checked here: within each capacity, none lost on the way. */
record CheapestFlow(long[] flows, long cost) {

    static CheapestFlow through(Network network) {
        Loader.loadNativeLibraries();
        var library = new MinCostFlow(network.nodes(), network.arcs());
        try {
            for (int arc = 0; arc < network.arcs(); arc++) {
                library.addArcWithCapacityAndUnitCost(network.tail(arc), network.head(arc), network.capacity(arc),
                        network.cost(arc));
            }
            for (int node = 0; node < network.nodes(); node++) {
                library.setNodeSupply(node, network.supply(node));
            }
            var status = library.solve();
            if (status != Status.OPTIMAL) {
                throw new IllegalStateException("no cheapest flow through " + network.nodes() + " nodes and "
                        + network.arcs() + " arcs: " + status);
            }
            var flows = new long[network.arcs()];
            for (int arc = 0; arc < flows.length; arc++) {
                flows[arc] = library.getFlow(arc);
            }
            return checked(network, flows);
        } finally {
            library.delete();
        }
    }

    private static CheapestFlow checked(Network network, long[] flows) {
        var missing = new long[network.nodes()];
        long cost = 0;
        for (int arc = 0; arc < flows.length; arc++) {
            if (flows[arc] < 0 || flows[arc] > network.capacity(arc)) {
                throw new IllegalStateException("arc " + arc + " carries " + flows[arc]);
            }
            missing[network.tail(arc)] += flows[arc];
            missing[network.head(arc)] -= flows[arc];
            cost = Math.addExact(cost, Math.multiplyExact(flows[arc], network.cost(arc)));
        }
        for (int node = 0; node < missing.length; node++) {
            if (missing[node] != network.supply(node)) {
                throw new IllegalStateException("node " + node + " sends " + missing[node]);
            }
        }
        return new CheapestFlow(flows, cost);
    }

    /**
     * How far the flow may be from the cheapest; 0 proves that it is the cheapest. A price at each node bounds the cost of
     * every flow from below (linear programming duality), whatever the prices are. Those taken are the lengths of the shortest paths along
     * which the flow could still be changed (Bellman and Ford), which exist unless it can be changed to a cheaper one.
     */
    long gap(Network network) {
        var prices = prices(network);
        long bound = 0;
        for (int node = 0; node < network.nodes(); node++) {
            bound = Math.subtractExact(bound, Math.multiplyExact(prices[node], network.supply(node)));
        }
        for (int arc = 0; arc < network.arcs(); arc++) {
            long reduced = network.cost(arc) + prices[network.tail(arc)] - prices[network.head(arc)];
            if (reduced < 0) {
                bound = Math.addExact(bound, Math.multiplyExact(reduced, network.capacity(arc)));
            }
        }
        return Math.subtractExact(cost, bound);
    }

    private long[] prices(Network network) {
        var prices = new long[network.nodes()];
        boolean changed = true;
        // without a cycle of negative length each round settles one more node of every shortest path
        for (int round = 0; changed && round <= network.nodes(); round++) {
            changed = false;
            for (int step = 0; step < flows.length; step++) {
                int arc = round % 2 == 0 ? step : flows.length - 1 - step;
                changed |= lower(network, prices, arc);
            }
        }
        return prices;
    }

    private boolean lower(Network network, long[] prices, int arc) {
        int tail = network.tail(arc);
        int head = network.head(arc);
        long along = prices[tail] + network.cost(arc);
        if (flows[arc] < network.capacity(arc) && along < prices[head]) {
            prices[head] = along;
            return true;
        }
        long back = prices[head] - network.cost(arc);
        if (flows[arc] > 0 && back < prices[tail]) {
            prices[tail] = back;
            return true;
        }
        return false;
    }
}
