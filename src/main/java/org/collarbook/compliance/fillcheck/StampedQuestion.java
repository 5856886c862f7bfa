package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.util.List;

import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** The lines of a collar or data plate as read, the tag where one was scanned, and what is to go in. */
@Schema(requiredProperties = "lines")
record StampedQuestion(@Nullable List<@Nullable String> lines, @Nullable String tag, @Nullable String product,
        @Nullable BigDecimal specificGravity, @Nullable BigDecimal liquidTemperatureF) {}
