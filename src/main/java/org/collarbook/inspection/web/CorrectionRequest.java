package org.collarbook.inspection.web;

import org.collarbook.inspection.bench.Refusals;
import org.collarbook.inspection.bench.TestSheet;
import org.jspecify.annotations.Nullable;

import com.fasterxml.jackson.annotation.JsonProperty;

import io.swagger.v3.oas.annotations.media.Schema;

/** Why an entry was a mistake, and what takes its place: another whole record, or nothing. */
@Schema(requiredProperties = "reason")
record CorrectionRequest(@Nullable String reason, @Nullable RequalificationRequest record,
        @JsonProperty("void") @Nullable Boolean isVoid) {

    record Read(String reason, @Nullable TestSheet instead) {}

    Read read() {
        var why = reason(reason, record, isVoid, new Refusals());
        return new Read(why, record == null ? null : SheetReader.read(record, "/record"));
    }

    /** The reason, once it is certain that exactly one of a record and void is given. */
    static String reason(@Nullable String reason, @Nullable Object record, @Nullable Boolean isVoid,
            Refusals refusals) {
        var why = refusals.required("/reason", reason, 1000);
        boolean empties = Boolean.TRUE.equals(isVoid);
        if (empties == (record != null)) {
            refusals.refuse("/record", empties ? "NOT_ALLOWED" : "MISSING", null,
                    "the whole corrected record, or void: true, and not both");
        }
        refusals.done();
        return String.valueOf(why);
    }
}
