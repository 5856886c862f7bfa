package org.collarbook.schedule;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** An export as asked for, once it has been read; the filter with ids for codes. */
@Schema(name = "ScheduleExportAsked")
record ExportAsked(ScheduleQuestion filter, @Nullable LocalDate asOf, @Nullable Instant knownAt,
        List<ExportFormat> formats, boolean fileForEachYear, @Nullable UUID since) {

    @Nullable
    Replay replay(Instant now) {
        return asOf == null && knownAt == null ? null : new Replay(asOf, knownAt == null ? now : knownAt);
    }
}
