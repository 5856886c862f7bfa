package org.collarbook.inspection.web;

import org.collarbook.inspection.Repair.Done;
import org.collarbook.inspection.bench.Refusals;
import org.jspecify.annotations.Nullable;

import com.fasterxml.jackson.annotation.JsonProperty;

import io.swagger.v3.oas.annotations.media.Schema;

/** Why a repair on record was a mistake, and what takes its place: another whole record, or nothing. */
@Schema(requiredProperties = "reason")
record RepairCorrectionRequest(@Nullable String reason, @Nullable RepairRequest record,
        @JsonProperty("void") @Nullable Boolean isVoid) {

    record Read(String reason, @Nullable Done instead) {}

    Read read() {
        var why = CorrectionRequest.reason(reason, record, isVoid, new Refusals());
        return new Read(why, record == null ? null : record.read("/record"));
    }
}
