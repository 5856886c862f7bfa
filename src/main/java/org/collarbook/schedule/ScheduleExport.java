package org.collarbook.schedule;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.jobs.JobStatus;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * The schedule as files: how far their making is, and what came of it. After {@code expiresAt} the files are deleted;
 * changes since this export can be asked for until {@code keysExpireAt}.
 */
@Schema(name = "ScheduleExport")
record ScheduleExport(UUID id, int number, JobStatus status, Instant requestedAt, UUID requestedBy, ExportAsked asked,
        Progress progress, @Nullable Instant startedAt, @Nullable Instant finishedAt, @Nullable Failure failure,
        @Nullable Instant expiresAt, @Nullable Instant keysExpireAt, boolean filesDeleted,
        @Nullable Manifest manifest) {

    /** {@code containersReplayed}: where another day or moment is asked for, each is assessed anew before the first row. */
    @Schema(name = "ScheduleExportProgress")
    record Progress(long rowsWritten, long containersReplayed, int attempt) {}

    @Schema(name = "ScheduleExportFailure")
    record Failure(String code, @Nullable String detail) {}

    /** All files are of the one snapshot. {@code errors} names the file of what no month could be told of. */
    @Schema(name = "ScheduleExportManifest")
    record Manifest(Instant snapshotAt, UUID requestedBy, ExportAsked asked, @Nullable Since since, String ruleBook,
            String evaluator, String software, String errors, List<FileEntry> files) {}

    /** {@code rows}: lines without the header; of a calendar its events. */
    @Schema(name = "ScheduleExportFile")
    record FileEntry(String name, String mediaType, long rows, long bytes, String sha256) {}

    /** How many rows are new, changed and gone since the earlier export. */
    @Schema(name = "ScheduleExportChanges")
    record Since(UUID export, Instant snapshotAt, long added, long changed, long removed) {}

    boolean isReplayed() {
        return asked.asOf() != null || asked.knownAt() != null;
    }
}
