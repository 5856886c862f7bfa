package org.collarbook.inspection.web;

import java.time.LocalDate;

import org.collarbook.inspection.Requalifier.Approval;
import org.collarbook.inspection.Requalifier.Named;
import org.collarbook.inspection.bench.Refusals;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A facility and its approval, as the letter that issued the RIN tells. */
@Schema(requiredProperties = {"name", "rin", "approval"})
record RequalifierRequest(@Nullable String name, @Nullable String rin, @Nullable ApprovalRequest approval) {

    record ApprovalRequest(@Nullable LocalDate from, @Nullable LocalDate expires) {}

    Named read() {
        var refusals = new Refusals();
        var named = refusals.required("/name", name, 200);
        var number = Rins.read("/rin", rin, refusals);
        if (rin == null || rin.isBlank()) {
            refusals.refuse("/rin", "MISSING", rin, Rins.ACCEPTED);
        }
        var approved = approval(refusals);
        refusals.done();
        if (named == null || number == null || approved == null) {
            throw new IllegalStateException("a requalifier was neither read nor refused");
        }
        return new Named(number, named, approved);
    }

    private @Nullable Approval approval(Refusals refusals) {
        var from = day("/approval/from", approval == null ? null : approval.from(), refusals);
        var expires = day("/approval/expires", approval == null ? null : approval.expires(), refusals);
        if (from == null || expires == null) {
            return null;
        }
        if (expires.isBefore(from)) {
            refusals.refuse("/approval/expires", "BEFORE_ITS_BEGINNING", expires, "a day not before " + from);
            return null;
        }
        return new Approval(from, expires);
    }

    private static @Nullable LocalDate day(String pointer, @Nullable LocalDate given, Refusals refusals) {
        if (given == null) {
            refusals.refuse(pointer, "MISSING", null, "a day such as 2026-11-25");
            return null;
        }
        if (given.getYear() < 1900 || given.getYear() > 2200) {
            refusals.refuse(pointer, "OUT_OF_RANGE", given, "from 1900 to 2200");
            return null;
        }
        return given;
    }
}
