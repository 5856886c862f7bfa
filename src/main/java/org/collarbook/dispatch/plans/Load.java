package org.collarbook.dispatch.plans;

import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;

/** What the lines of a plan ask of the shop by week and of the racks by day. */
record Load(SortedMap<IsoWeek, Integer> shop, SortedMap<RackDay, Integer> racks) {

    static Load of(List<PlanLine> lines) {
        var shop = new TreeMap<IsoWeek, Integer>();
        var racks = new TreeMap<RackDay, Integer>();
        for (var line : lines) {
            racks.merge(line.rack(), 1, Integer::sum);
            if (line.goesToTheShop()) {
                shop.merge(line.week(), 1, Integer::sum);
            }
        }
        return new Load(shop, racks);
    }

    int inShop(IsoWeek week) {
        return shop.getOrDefault(week, 0);
    }

    int onRack(RackDay rack) {
        return racks.getOrDefault(rack, 0);
    }

    int peak() {
        return shop.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    }

    long weeksOver(PlanInput input) {
        return shop.entrySet().stream().filter(week -> week.getValue() > input.shop().in(week.getKey())).count();
    }

    long racksOver(FreePlaces places) {
        return racks.entrySet().stream().filter(rack -> rack.getValue() > places.at(rack.getKey())).count();
    }
}
