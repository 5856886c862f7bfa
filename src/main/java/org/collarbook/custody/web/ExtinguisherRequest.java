package org.collarbook.custody.web;

import java.time.YearMonth;
import java.util.UUID;

import org.collarbook.custody.NewExtinguisher;
import org.collarbook.platform.Inputs;
import org.collarbook.regulation.Extinguisher;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** An extinguisher as its label tells; what is absent or null is not known. */
@Schema(requiredProperties = "label")
record ExtinguisherRequest(@Nullable String label, @Nullable String type, @Nullable Integer ratingBC,
        @Nullable String manufactured) {

    /** More than any portable extinguisher is rated. */
    private static final int MOST = 1000;

    NewExtinguisher at(UUID site, YearMonth thisMonth) {
        var inputs = new Inputs();
        var named = inputs.required("/label", label, 40);
        var kind = inputs.word("/type", type, Extinguisher.class);
        if (ratingBC != null && (ratingBC < 1 || ratingBC > MOST)) {
            inputs.refuse("/ratingBC", "OUT_OF_RANGE", ratingBC.toString(),
                    "the whole number before B:C, from 1 to " + MOST + ", such as 40; null when it is not known");
        }
        var made = Months.read("/manufactured", manufactured, thisMonth, inputs);
        inputs.done();
        if (named == null) {
            throw new IllegalStateException("a label was neither read nor refused");
        }
        return new NewExtinguisher(site, named, kind, ratingBC, made);
    }
}
