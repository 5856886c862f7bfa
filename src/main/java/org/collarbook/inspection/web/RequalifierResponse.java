package org.collarbook.inspection.web;

import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.inspection.Requalifier;

public record RequalifierResponse(UUID id, int version, String rin, String name, ApprovalOfFacility approval) {

    public record ApprovalOfFacility(LocalDate from, LocalDate expires) {

        static ApprovalOfFacility from(Requalifier.Approval approval) {
            return new ApprovalOfFacility(approval.from(), approval.expires());
        }
    }

    static RequalifierResponse from(Requalifier one) {
        return new RequalifierResponse(one.id(), one.version(), one.rin().value(), one.name(),
                ApprovalOfFacility.from(one.approval()));
    }
}
