package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.util.function.Function;

import org.collarbook.platform.Inputs;
import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.registry.Tag;
import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.ParseResult.Parsed;
import org.collarbook.regulation.ParseResult.Rejected;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** Which container is meant (by its tag, or by its serial number and what else was read) and what is to go in. */
record FillCheckQuery(@Nullable Tag tag, @Nullable Serial serial, @Nullable Specification specification,
        @Nullable MakerSymbol maker, @Nullable BigDecimal specificGravity) {

    private static final int LONGEST = 100;
    private static final int MOST_DIGITS = 9;

    /** Refuses by problem when neither a tag nor a serial is given, or a text cannot be read. */
    static FillCheckQuery of(@Nullable String tag, @Nullable String serial, @Nullable String specification,
            @Nullable String maker, @Nullable BigDecimal specificGravity) {
        var inputs = new Inputs();
        var query = new FillCheckQuery(read(inputs, "tag", tag, Tag::tryParse),
                read(inputs, "serial", serial, Serial::tryParse),
                read(inputs, "specification", specification, Specification::tryParse),
                read(inputs, "maker", maker, MakerSymbol::tryParse), specificGravity);
        if (isBlank(tag) == isBlank(serial)) {
            inputs.refuse("tag", isBlank(tag) ? "MISSING" : "TOO_MANY", tag, "either tag or serial");
        }
        if (specificGravity != null && (specificGravity.signum() <= 0
                || Math.abs((long) specificGravity.scale()) > MOST_DIGITS
                || specificGravity.compareTo(BigDecimal.ONE) >= 0)) {
            inputs.refuse("specificGravity", "OUT_OF_RANGE", specificGravity.toString(),
                    "the specific gravity of the liquid at 60 °F, between 0 and 1, such as 0.508");
        }
        inputs.done();
        return query;
    }

    private static boolean isBlank(@Nullable String text) {
        return text == null || text.isBlank();
    }

    private static <T> @Nullable T read(Inputs inputs, String name, @Nullable String text,
            Function<String, ParseResult<T>> parser) {
        if (text == null || text.isBlank()) {
            return null;
        }
        if (text.length() > LONGEST) {
            inputs.refuse(name, "TOO_LONG", text, "at most " + LONGEST + " characters");
            return null;
        }
        return switch (parser.apply(text)) {
            case Parsed<T>(var value, var _) -> value;
            case Rejected<T>(int index, var _, var expected) -> {
                inputs.refuse(name, "UNREADABLE", text, expected + " (at character " + (index + 1) + ")");
                yield null;
            }
        };
    }
}
