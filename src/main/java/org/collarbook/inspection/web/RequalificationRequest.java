package org.collarbook.inspection.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;

import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A record as the sheet at the bench has it; the result is not among it. What is absent or null was not told. */
@Schema(requiredProperties = {"performedOn", "method", "operator"})
record RequalificationRequest(@Nullable LocalDate performedOn, @Nullable String requalifier, @Nullable String method,
        @Nullable Boolean star, @Nullable Boolean plus, @Nullable VisualRequest visual,
        @Nullable Integer markedPressurePsig, @Nullable Integer testPressurePsig,
        @Nullable ExpansionRequest expansion, @Nullable BigDecimal limitPercent,
        @Nullable List<@Nullable RepeatRequest> repeats, @Nullable String coating, @Nullable String owner,
        @Nullable String operator, @Nullable BigDecimal tareLb, @Nullable List<@Nullable String> grounds,
        @Nullable String disposition, @Nullable String note) {

    record VisualRequest(@Nullable List<@Nullable ItemRequest> items) {}

    record ItemRequest(@Nullable String item, @Nullable String finding, @Nullable String note) {}

    /** Each as in "63.2 cm3"; the elastic part may be left to be computed. */
    record ExpansionRequest(@Nullable String total, @Nullable String elastic, @Nullable String permanent) {}

    record RepeatRequest(@Nullable Integer testPressurePsig, @Nullable ExpansionRequest expansion,
            @Nullable String reason, @Nullable String note) {}
}
