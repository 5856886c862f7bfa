package org.collarbook.custody.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Locale;

import org.collarbook.custody.ProductContent;
import org.collarbook.platform.Inputs;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.SpecificGravity;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

@Schema(requiredProperties = {"code", "lading", "specificGravity", "declaredBy", "declaredOn"})
record ProductRequest(@Nullable String code, @Nullable String lading, @Nullable BigDecimal specificGravity,
        @Nullable String declaredBy, @Nullable LocalDate declaredOn) {

    private static final int EARLIEST = 1940;

    ProductContent toContent(LocalDate today) {
        var inputs = new Inputs();
        var readCode = inputs.required("/code", code, 40);
        var named = inputs.required("/lading", lading, 64);
        var readLading = named == null ? null : named.toUpperCase(Locale.ROOT);
        if (readLading != null && !Lading.isWellFormed(readLading)) {
            inputs.refuse("/lading", "INVALID_LADING", named, "letters, digits and _, such as LPG or PROPANE");
        }
        var gravity = inputs.present("/specificGravity", specificGravity, SpecificGravity.EXPECTED);
        if (gravity != null && !SpecificGravity.isPlausible(gravity)) {
            inputs.refuse("/specificGravity", "OUT_OF_RANGE", gravity.toString(), SpecificGravity.EXPECTED);
        }
        var by = inputs.required("/declaredBy", declaredBy, 200);
        var on = day(today, inputs);
        inputs.done();
        if (readCode == null || readLading == null || gravity == null || by == null || on == null) {
            throw new IllegalStateException("a product was neither read nor refused");
        }
        return new ProductContent(readCode, new Lading(readLading), gravity, by, on);
    }

    private @Nullable LocalDate day(LocalDate today, Inputs inputs) {
        var on = inputs.present("/declaredOn", declaredOn, "the day it was declared, such as 2026-11-25");
        if (on != null && on.isAfter(today)) {
            inputs.refuse("/declaredOn", "IN_THE_FUTURE", on.toString(), "a day that has begun");
        } else if (on != null && on.getYear() < EARLIEST) {
            inputs.refuse("/declaredOn", "OUT_OF_RANGE", on.toString(), "not before " + EARLIEST);
        }
        return on;
    }
}
