package org.collarbook.dispatch.plans;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.collarbook.dispatch.plans.PlanInput.Rack;

/** The places of the racks, day by day, less those that are taken and with those that are granted besides. */
final class FreePlaces {

    private final Map<Rack, Integer> racks;
    private final Map<RackDay, Integer> more;

    private FreePlaces(Map<Rack, Integer> racks, Map<RackDay, Integer> more) {
        this.racks = racks;
        this.more = more;
    }

    static FreePlaces all(Map<Rack, Integer> racks) {
        return new FreePlaces(racks, Map.of());
    }

    FreePlaces with(Map<RackDay, Integer> granted) {
        var changed = new HashMap<>(more);
        granted.forEach((rack, places) -> changed.merge(rack, places, Integer::sum));
        return new FreePlaces(racks, changed);
    }

    FreePlaces without(List<PlanLine> taken) {
        var changed = new HashMap<>(more);
        taken.forEach(line -> changed.merge(line.rack(), -1, Integer::sum));
        return new FreePlaces(racks, changed);
    }

    /** Of a rack that is not known none is free. */
    int at(RackDay rack) {
        return racks.getOrDefault(new Rack(rack.vehicle(), rack.size()), 0) + more.getOrDefault(rack, 0);
    }
}
