package org.collarbook.intake;

import java.util.ArrayList;
import java.util.List;

import org.collarbook.custody.Emptyings;
import org.collarbook.custody.Emptyings.Emptied;
import org.collarbook.holds.HoldBatch;
import org.collarbook.intake.IntoRegister.Written;
import org.collarbook.registry.fittings.FittingBatch;
import org.collarbook.registry.fittings.FittingBatch.PartLine;
import org.collarbook.registry.fittings.FittingBatch.StopLine;
import org.springframework.stereotype.Component;

/** Writes what few rows bring, once their containers stand where they stand: a hold's day is that of its site. */
@Component
class Extras {

    private final HoldBatch holds;
    private final FittingBatch fittings;
    private final Emptyings emptyings;

    Extras(HoldBatch holds, FittingBatch fittings, Emptyings emptyings) {
        this.holds = holds;
        this.fittings = fittings;
        this.emptyings = emptyings;
    }

    void take(List<Written> written, Terms terms) {
        var held = new ArrayList<HoldBatch.Line>();
        var parts = new ArrayList<PartLine>();
        var stops = new ArrayList<StopLine>();
        var emptied = new ArrayList<Emptied>();
        for (var one : written) {
            var extra = one.write().extra();
            extra.holds().forEach(hold -> held.add(new HoldBatch.Line(one.id(), hold.reason(), hold.since(),
                    hold.note())));
            extra.parts().forEach(line -> parts.add(new PartLine(one.id(), line.part().fitted(),
                    line.part().removal(), line.known())));
            extra.stops().forEach(stop -> stops.add(new StopLine(one.id(), stop.since(), stop.reason(),
                    stop.returnedOn(), stop.note())));
            if (extra.emptied() != null) {
                emptied.add(new Emptied(one.id(), extra.emptied()));
            }
        }
        if (!held.isEmpty()) {
            holds.place(held, terms.importId(), terms.by());
        }
        if (!parts.isEmpty()) {
            fittings.addParts(parts, terms.by());
        }
        if (!stops.isEmpty()) {
            fittings.addStops(stops, terms.by());
        }
        if (!emptied.isEmpty()) {
            emptyings.insert(emptied, terms.by());
        }
    }
}
