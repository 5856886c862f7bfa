package org.collarbook.holds.web;

import java.time.Instant;
import java.time.YearMonth;

import org.collarbook.holds.NewRecall;
import org.collarbook.holds.SerialRange;
import org.collarbook.platform.Inputs;
import org.collarbook.platform.Moments;
import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** What a recall names; what is absent or null does not narrow it. {@code occurredAt} is now when absent. */
@Schema(requiredProperties = {"maker", "issuedBy"})
record RecallRequest(@Nullable String maker, @Nullable String lot, @Nullable String specification,
        @Nullable String serialFirst, @Nullable String serialLast, @Nullable String manufacturedFirst,
        @Nullable String manufacturedLast, @Nullable String issuedBy, @Nullable String reference,
        @Nullable Instant occurredAt) {

    NewRecall read(Instant now) {
        var inputs = new Inputs();
        var symbol = inputs.required("/maker", maker, 200);
        var by = symbol == null ? null : read("/maker", "INVALID_MAKER", symbol, MakerSymbol.tryParse(symbol), inputs);
        var named = inputs.optional("/lot", lot, 200);
        var design = specification == null || specification.isBlank()
                ? null
                : read("/specification", "UNKNOWN_SPECIFICATION", specification, Specification.tryParse(specification),
                        inputs);
        var serials = serials(inputs);
        var first = Months.read("/manufacturedFirst", manufacturedFirst, inputs);
        var last = Months.read("/manufacturedLast", manufacturedLast, inputs);
        ordered(first, last, inputs);
        var issuer = inputs.required("/issuedBy", issuedBy, 200);
        var number = inputs.optional("/reference", reference, 200);
        var at = Moments.pastOrNow("/occurredAt", occurredAt, now, inputs);
        inputs.done();
        if (by == null || issuer == null) {
            throw new IllegalStateException("a recall was neither read nor refused");
        }
        return new NewRecall(by, named, design, serials, first, last, issuer, number, at);
    }

    private @Nullable SerialRange serials(Inputs inputs) {
        var from = serial("/serialFirst", serialFirst, serialLast, inputs);
        var to = serial("/serialLast", serialLast, serialFirst, inputs);
        if (from == null || to == null) {
            return null;
        }
        var range = SerialRange.tryOf(from, to);
        if (range == null) {
            inputs.refuse("/serialLast", "INVALID_RANGE", serialLast, SerialRange.EXPECTED);
        }
        return range;
    }

    private static @Nullable Serial serial(String pointer, @Nullable String given, @Nullable String other,
            Inputs inputs) {
        if (given == null || given.isBlank()) {
            if (other != null && !other.isBlank()) {
                inputs.present(pointer, null, SerialRange.EXPECTED);
            }
            return null;
        }
        return read(pointer, "INVALID_SERIAL", given, Serial.tryParse(given), inputs);
    }

    private static void ordered(@Nullable YearMonth first, @Nullable YearMonth last, Inputs inputs) {
        if (first != null && last != null && last.isBefore(first)) {
            inputs.refuse("/manufacturedLast", "OUT_OF_RANGE", last.toString(), "not before the first, " + first);
        }
    }

    private static <T> @Nullable T read(String pointer, String code, String text, ParseResult<T> result,
            Inputs inputs) {
        return switch (result) {
            case Parsed<T>(var value, var _) -> value;
            case Rejected<T>(int _, var _, var expected) -> {
                inputs.refuse(pointer, code, text, expected);
                yield null;
            }
        };
    }
}
