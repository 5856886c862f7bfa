package org.collarbook.compliance.transport;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;

import org.collarbook.platform.Inputs;
import org.collarbook.regulation.Purpose;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A move to be judged and recorded; {@code happened} tells of one that was made whatever is to be said of it. */
@Schema(requiredProperties = {"movedOn", "percentFull", "purpose", "from", "to", "carrier", "inspectedOn",
        "inspectedBy", "leakFree", "secured"})
record TransportRequest(@Nullable LocalDate movedOn, @Nullable BigDecimal percentFull, @Nullable String purpose,
        @Nullable String from, @Nullable String to, @Nullable String carrier, @Nullable LocalDate inspectedOn,
        @Nullable String inspectedBy, @Nullable Boolean leakFree, @Nullable Boolean secured,
        @Nullable String findings, @Nullable Boolean happened) {

    Transport.Told read(Clock clock) {
        var inputs = new Inputs();
        boolean fact = Boolean.TRUE.equals(happened);
        var moved = day("/movedOn", movedOn, LocalDate.now(clock.withZone(ZoneOffset.ofHours(14))), inputs);
        var looked = day("/inspectedOn", inspectedOn, moved, inputs);
        var full = percent(inputs);
        var what = inputs.word("/purpose", inputs.required("/purpose", purpose, 40), Purpose.class);
        var start = inputs.required("/from", from, 200);
        var end = inputs.required("/to", to, 200);
        var by = inputs.required("/carrier", carrier, 200);
        var person = inputs.required("/inspectedBy", inspectedBy, 200);
        inputs.present("/leakFree", leakFree, "whether it was found free of leaks");
        inputs.present("/secured", secured, "whether it is braced on the vehicle and its valves are protected");
        if (Boolean.FALSE.equals(secured) && !fact) {
            inputs.refuse("/secured", "NOT_SECURED", "false",
                    "true: it is braced on the vehicle, 49 CFR 173.315(j) and 177.834(a)");
        }
        var found = inputs.optional("/findings", findings, 1000);
        inputs.done();
        if (moved == null || looked == null || full == null || what == null || start == null || end == null
                || by == null || person == null || leakFree == null || secured == null) {
            throw new IllegalStateException("a move was neither read nor refused");
        }
        return new Transport.Told(moved, full, what, start, end, by, looked, person, leakFree, secured, found, fact);
    }

    private static @Nullable LocalDate day(String pointer, @Nullable LocalDate given, @Nullable LocalDate last,
            Inputs inputs) {
        var day = inputs.present(pointer, given, "the day, such as 2026-11-25");
        if (day != null && (day.getYear() < 1900 || last != null && day.isAfter(last))) {
            inputs.refuse(pointer, "OUT_OF_RANGE", day.toString(), "a day from 1900 on, not after "
                    + (last == null ? "the move" : last));
            return null;
        }
        return day;
    }

    private @Nullable BigDecimal percent(Inputs inputs) {
        var full = inputs.present("/percentFull", percentFull, "how full it is, in percent of its volume");
        if (full != null && (full.signum() < 0 || full.compareTo(BigDecimal.valueOf(100)) > 0
                || full.stripTrailingZeros().scale() > 2)) {
            inputs.refuse("/percentFull", "OUT_OF_RANGE", full.toString(), "0 to 100, at most two decimals");
            return null;
        }
        return full;
    }
}
