package org.collarbook.compliance.swaps;

import java.util.EnumSet;
import java.util.Set;
import java.util.UUID;

import org.collarbook.custody.Place;
import org.collarbook.custody.Places;
import org.collarbook.custody.SiteKind;
import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Reads where containers were swapped, and what brought and took them. */
@Component
public class StopReader {

    private static final Set<SiteKind> CARRYING = EnumSet.of(SiteKind.VEHICLE, SiteKind.DEPOT);

    private final Places places;

    StopReader(Places places) {
        this.places = places;
    }

    public record Stop(Place site, Place vehicle) {}

    /** Refuses by problem, with all that the inputs have gathered before. */
    public Stop read(@Nullable UUID site, @Nullable UUID vehicle, Inputs inputs) {
        var where = known("/site", inputs.present("/site", site, "the id of the site where it was done"), inputs);
        var carrier = known("/vehicle", inputs.present("/vehicle", vehicle, "the id of the vehicle, a site of the kind"
                + " VEHICLE, or of a depot"), inputs);
        if (carrier != null && !CARRYING.contains(carrier.kind())) {
            inputs.refuse("/vehicle", "NOT_A_VEHICLE", carrier.kind().name(), "a site of the kind VEHICLE or DEPOT");
        } else if (carrier != null && where != null && carrier.siteId().equals(where.siteId())) {
            inputs.refuse("/vehicle", "SAME_SITE", carrier.code(), "another site than where it was done");
        }
        inputs.done();
        if (where == null || carrier == null) {
            throw new IllegalStateException("a stop was neither read nor refused");
        }
        return new Stop(where, carrier);
    }

    private @Nullable Place known(String pointer, @Nullable UUID id, Inputs inputs) {
        var place = id == null ? null : places.site(id).orElse(null);
        if (id != null && place == null) {
            inputs.refuse(pointer, "UNKNOWN_SITE", id.toString(), "the id of a site");
        }
        return place;
    }
}
