package org.collarbook.inspection.web;

import java.time.LocalDate;

import org.collarbook.inspection.Repair.Done;
import org.collarbook.inspection.Repair.Kind;
import org.collarbook.inspection.Repair.Seams;
import org.collarbook.inspection.bench.Refusals;
import org.collarbook.inspection.bench.Sources;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A repair as the facility certifies it. */
@Schema(requiredProperties = {"performedOn", "kind", "requalifier", "work", "marksTransferred", "certification"})
record RepairRequest(@Nullable LocalDate performedOn, @Nullable String kind, @Nullable String seams,
        @Nullable String requalifier, @Nullable String work, @Nullable Boolean marksTransferred,
        @Nullable String certification) {

    /** {@code pointer} is where in the request it stands. */
    Done read(String pointer) {
        var refusals = new Refusals(pointer);
        present("/performedOn", performedOn, "the day on which it was done", refusals);
        if (performedOn != null && (performedOn.getYear() < 1900 || performedOn.getYear() > 2200)) {
            refusals.refuse("/performedOn", "OUT_OF_RANGE", performedOn, "a day from 1900 on that has begun");
        }
        var what = refusals.word("/kind", kind, Kind.class);
        present("/kind", kind == null || kind.isBlank() ? null : kind, "REPAIR, REBUILD or REHEAT", refusals);
        var joined = refusals.word("/seams", seams, Seams.class);
        var rin = Rins.read("/requalifier", requalifier, refusals);
        present("/requalifier", requalifier == null || requalifier.isBlank() ? null : requalifier,
                "the RIN of the facility", refusals);
        var done = refusals.required("/work", work, 2000);
        present("/marksTransferred", marksTransferred, "true when all original marks are on it still, or again",
                refusals);
        var certified = refusals.required("/certification", certification, 1000);
        refusals.done();
        if (performedOn == null || what == null || rin == null || done == null || marksTransferred == null
                || certified == null) {
            throw new IllegalStateException("a repair was neither read nor refused");
        }
        return new Done(performedOn, what, joined, rin, done, marksTransferred, certified);
    }

    private static void present(String pointer, @Nullable Object given, String accepted, Refusals refusals) {
        if (given == null) {
            refusals.refuse(pointer, "MISSING", null, accepted, Sources.REPAIR_RECORD);
        }
    }
}
