package org.collarbook.inspection.web;

import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.inspection.Corrected;
import org.collarbook.inspection.Repair;
import org.collarbook.inspection.bench.Sources;
import org.collarbook.inspection.web.RequalificationResponse.RequalifierOfRecord;
import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

/**
 * The record is kept until {@code keepUntil} at least; the due month did not move. {@code corrected} says that it was a
 * mistake and counts no more.
 */
public record RepairResponse(UUID id, UUID containerId, LocalDate performedOn, Repair.Kind kind,
        Repair.@Nullable Seams seams,
        @Nullable RequalifierOfRecord requalifier, String work, boolean marksTransferred, String certification,
        LocalDate keepUntil, Citation kept, @Nullable Corrected corrected, Instant recordedAt, UUID recordedBy) {

    public static RepairResponse from(Repair repair) {
        var done = repair.done();
        return new RepairResponse(repair.id(), repair.containerId(), done.performedOn(), done.kind(), done.seams(),
                RequalifierOfRecord.from(repair.requalifier()), done.work(), done.marksTransferred(),
                done.certification(), repair.keepUntil(), Sources.REPAIR_RECORD, repair.corrected(),
                repair.recordedAt(),
                repair.recordedBy());
    }
}
