package org.collarbook.registry.fittings;

import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.UUID;

import org.collarbook.platform.Inputs;
import org.collarbook.regulation.Fittings;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** What is told of a part that was fitted, and of one that was taken out. */
final class PartRequests {

    private PartRequests() {}

    /** {@code replaces} names the part that was taken out for it. */
    @Schema(requiredProperties = {"kind", "fittedOn"})
    record FittedRequest(@Nullable String kind, @Nullable String maker, @Nullable String model,
            @Nullable String serial, @Nullable String manufactured, @Nullable LocalDate fittedOn,
            @Nullable String labelledFor, @Nullable UUID replaces) {

        Part.Fitted read(Clock clock) {
            var inputs = new Inputs();
            var what = inputs.word("/kind", inputs.required("/kind", kind, 40), PartKind.class);
            var day = day("/fittedOn", fittedOn, clock, inputs);
            var label = inputs.word("/labelledFor", labelledFor, Fittings.Label.class);
            if (what == PartKind.EXEMPTION_LABEL && labelledFor == null
                    || what != PartKind.EXEMPTION_LABEL && labelledFor != null) {
                inputs.refuse("/labelledFor", labelledFor == null ? "MISSING" : "NOT_ALLOWED", labelledFor,
                        "what the label says, of an EXEMPTION_LABEL alone");
            }
            var made = made(what, day, inputs);
            var by = inputs.optional("/maker", maker, 100);
            var text = inputs.optional("/model", model, 100);
            var number = inputs.optional("/serial", serial, 60);
            inputs.done();
            if (what == null || day == null) {
                throw new IllegalStateException("a part was neither read nor refused");
            }
            return new Part.Fitted(what, by, text, number, made, day, label);
        }

        private @Nullable YearMonth made(@Nullable PartKind what, @Nullable LocalDate day, Inputs inputs) {
            if (manufactured == null || manufactured.isBlank()) {
                if (what == PartKind.RELIEF_VALVE) {
                    inputs.refuse("/manufactured", "MISSING", null,
                            "the month stamped on the relief valve, such as 2024-05: it is replaced by its own age");
                }
                return null;
            }
            try {
                var month = YearMonth.parse(manufactured.strip());
                if (month.getYear() >= 1900 && (day == null || !month.atDay(1).isAfter(day))) {
                    return month;
                }
                inputs.refuse("/manufactured", "OUT_OF_RANGE", manufactured, "a month from 1900 on, not after the day"
                        + " on which it was fitted");
            } catch (DateTimeParseException unreadable) {
                inputs.refuse("/manufactured", "INVALID_MONTH", manufactured, "a month such as 2024-05");
            }
            return null;
        }
    }

    /** {@code forGood}: the opening is closed and nothing belongs in its place; false when absent. */
    @Schema(requiredProperties = {"removedOn", "reason"})
    record RemovalRequest(@Nullable LocalDate removedOn, @Nullable String reason, @Nullable Boolean forGood) {

        Part.Removal read(Clock clock) {
            var inputs = new Inputs();
            var day = day("/removedOn", removedOn, clock, inputs);
            var why = inputs.required("/reason", reason, 500);
            inputs.done();
            if (day == null || why == null) {
                throw new IllegalStateException("a removal was neither read nor refused");
            }
            return new Part.Removal(day, why, Boolean.TRUE.equals(forGood));
        }
    }

    /** A day that has begun somewhere on earth: the container's own is not known here. */
    static @Nullable LocalDate day(String pointer, @Nullable LocalDate given, Clock clock, Inputs inputs) {
        var day = inputs.present(pointer, given, "the day, such as 2026-11-25");
        if (day != null && (day.getYear() < 1900 || day.isAfter(LocalDate.now(clock.withZone(ZoneOffset.ofHours(
                14)))))) {
            inputs.refuse(pointer, day.getYear() < 1900 ? "OUT_OF_RANGE" : "IN_THE_FUTURE", day.toString(),
                    "a day from 1900 on that has begun");
            return null;
        }
        return day;
    }
}
