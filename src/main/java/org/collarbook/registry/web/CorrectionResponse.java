package org.collarbook.registry.web;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.collarbook.registry.Correction;
import org.jspecify.annotations.Nullable;

/** What one act changed of a container, each value as it was and as it became; absent is not known. */
public record CorrectionResponse(UUID id, UUID containerId, List<Change> changes, String reason,
        @Nullable UUID takesBack,
        Instant recordedAt, UUID recordedBy) {

    public record Change(String field, @Nullable String was, @Nullable String became) {}

    public static CorrectionResponse from(Correction done) {
        return new CorrectionResponse(done.id(), done.containerId(), done.changes().stream()
                .map(change -> new Change(change.field(), change.recorded(), change.given())).toList(), done.reason(),
                done.takesBack(), done.recordedAt(), done.recordedBy());
    }
}
