package org.collarbook.custody.web;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

import org.collarbook.custody.StandingExtinguisher;
import org.collarbook.regulation.Extinguisher;
import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;

record ExtinguisherResponse(UUID id, UUID siteId, String label, @Nullable Extinguisher type,
        @Nullable Integer ratingBC, @Nullable String manufactured, Instant recordedAt, @Nullable Instant removedAt,
        List<ExtinguisherRecord> records) {

    record ExtinguisherRecord(String month, Method method, String by, Instant recordedAt) {}

    static ExtinguisherResponse from(StandingExtinguisher one) {
        var about = one.about();
        return new ExtinguisherResponse(one.id(), about.siteId(), about.label(), about.type(), about.ratingBC(),
                about.manufactured() == null ? null : about.manufactured().toString(), one.recordedAt(),
                one.removedAt(),
                one.records().stream().map(done -> new ExtinguisherRecord(done.month().toString(), done.method(),
                        done.by(), done.recordedAt())).toList());
    }
}
