package org.collarbook.inspection.web;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.inspection.Corrected;
import org.collarbook.inspection.RecordedTest;
import org.collarbook.inspection.Requalifier.Named;
import org.collarbook.inspection.web.RequalifierResponse.ApprovalOfFacility;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;

/**
 * A requalification on record. {@code record} is null where no more than the mark is known; {@code corrects} says which
 * entry it took the place of, {@code corrected} that it was a mistake itself and counts no more.
 */
public record RequalificationResponse(UUID id, UUID containerId, String month, @Nullable LocalDate performedOn,
        @Nullable Method method, Result result, boolean star, boolean plus, @Nullable String rin,
        @Nullable String asStamped, @Nullable SheetResponse record, @Nullable CorrectsResponse corrects,
        @Nullable Corrected corrected, Instant recordedAt, UUID recordedBy) {

    public record RequalifierOfRecord(String rin, String name, ApprovalOfFacility approval) {

        static @Nullable RequalifierOfRecord from(@Nullable Named facility) {
            return facility == null
                    ? null
                    : new RequalifierOfRecord(facility.rin().value(), facility.name(),
                            ApprovalOfFacility.from(facility.approval()));
        }
    }

    public record CorrectsResponse(UUID requalification, String reason) {}

    public static RequalificationResponse from(RecordedTest test) {
        var done = test.requalification();
        var correcting = test.correcting();
        return new RequalificationResponse(test.id(), test.containerId(), done.month().toString(), test.performedOn(),
                done.method(), done.result(), done.star(), done.plus(), done.rin() == null ? null : done.rin().value(),
                test.asStamped(), SheetResponse.from(test.sheet()),
                correcting == null ? null : new CorrectsResponse(correcting.entry(), correcting.reason()),
                test.corrected(), test.recordedAt(), test.recordedBy());
    }

    static List<RequalificationResponse> from(List<RecordedTest> tests) {
        return tests.stream().map(RequalificationResponse::from).toList();
    }
}
