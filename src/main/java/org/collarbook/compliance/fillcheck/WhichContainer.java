package org.collarbook.compliance.fillcheck;

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

/** Which container is meant: by its tag, or by its serial number and what else was read. */
public record WhichContainer(@Nullable Tag tag, @Nullable Serial serial, @Nullable Specification specification,
        @Nullable MakerSymbol maker) {

    private static final int LONGEST = 100;

    /** {@code pointer} is what the inputs' names begin with: {@code /} in a body, nothing in a query. */
    public static WhichContainer read(String pointer, @Nullable String tag, @Nullable String serial,
            @Nullable String specification, @Nullable String maker, Inputs inputs) {
        if (isBlank(tag) == isBlank(serial)) {
            inputs.refuse(pointer + "tag", isBlank(tag) ? "MISSING" : "TOO_MANY", tag, "either tag or serial");
        }
        return new WhichContainer(tag(pointer, tag, inputs),
                read(inputs, pointer + "serial", serial, Serial::tryParse),
                read(inputs, pointer + "specification", specification, Specification::tryParse),
                read(inputs, pointer + "maker", maker, MakerSymbol::tryParse));
    }

    static @Nullable Tag tag(String pointer, @Nullable String tag, Inputs inputs) {
        return read(inputs, pointer + "tag", tag, Tag::tryParse);
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
