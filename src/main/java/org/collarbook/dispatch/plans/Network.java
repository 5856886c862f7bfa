package org.collarbook.dispatch.plans;

import java.util.Arrays;

/** A network of flows in whole numbers: what leaves each node less what enters it is its supply. */
final class Network {

    private static final int START = 1024;

    private int nodes;
    private int arcs;
    private int[] tails = new int[START];
    private int[] heads = new int[START];
    private long[] capacities = new long[START];
    private long[] costs = new long[START];
    private long[] supplies = new long[START];

    int node() {
        if (nodes == supplies.length) {
            supplies = Arrays.copyOf(supplies, nodes * 2);
        }
        return nodes++;
    }

    int arc(int tail, int head, long capacity, long cost) {
        if (arcs == tails.length) {
            tails = Arrays.copyOf(tails, arcs * 2);
            heads = Arrays.copyOf(heads, arcs * 2);
            capacities = Arrays.copyOf(capacities, arcs * 2);
            costs = Arrays.copyOf(costs, arcs * 2);
        }
        tails[arcs] = tail;
        heads[arcs] = head;
        capacities[arcs] = capacity;
        costs[arcs] = cost;
        return arcs++;
    }

    void supply(int node, long more) {
        supplies[node] += more;
    }

    int nodes() {
        return nodes;
    }

    int arcs() {
        return arcs;
    }

    int tail(int arc) {
        return tails[arc];
    }

    int head(int arc) {
        return heads[arc];
    }

    long capacity(int arc) {
        return capacities[arc];
    }

    long cost(int arc) {
        return costs[arc];
    }

    long supply(int node) {
        return supplies[node];
    }
}
