package org.collarbook.compliance.training;

import java.time.LocalDate;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** What 49 CFR 172.704(d) asks a record of training to tell. */
@Schema(requiredProperties = {"person", "kind", "trainedOn", "providedBy", "certifiedBy"})
record TrainingRequest(@Nullable String person, @Nullable String kind, @Nullable LocalDate trainedOn,
        @Nullable LocalDate expires, @Nullable String providedBy, @Nullable String materials,
        @Nullable String certifiedBy) {

    /** 49 CFR 172.704(c)(2): at least once every three years; filling by the same measure, from memory. */
    private static final int YEARS = 3;

    Training.Done read(LocalDate today) {
        var inputs = new Inputs();
        var who = inputs.required("/person", person, 100);
        var what = inputs.word("/kind", inputs.required("/kind", kind, 40), Training.Kind.class);
        var day = inputs.present("/trainedOn", trainedOn, "the day on which it was completed");
        if (day != null && (day.getYear() < 1900 || day.isAfter(today))) {
            inputs.refuse("/trainedOn", "OUT_OF_RANGE", day.toString(), "a day from 1900 on, not after " + today);
        }
        var last = day == null ? null : day.plusYears(YEARS);
        if (expires != null && day != null && (!expires.isAfter(day) || expires.isAfter(last))) {
            inputs.refuse("/expires", "OUT_OF_RANGE", expires.toString(), "after " + day + " and not after " + last
                    + ": at least every three years, 49 CFR 172.704(c)(2)");
        }
        var by = inputs.required("/providedBy", providedBy, 200);
        var of = inputs.optional("/materials", materials, 500);
        var certified = inputs.required("/certifiedBy", certifiedBy, 200);
        inputs.done();
        if (who == null || what == null || day == null || by == null || certified == null || last == null) {
            throw new IllegalStateException("a training was neither read nor refused");
        }
        return new Training.Done(who, what, day, expires == null ? last : expires, by, of, certified);
    }
}
