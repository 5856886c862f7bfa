package org.collarbook.platform.web;

import java.time.DateTimeException;
import java.util.function.Function;

import org.jspecify.annotations.Nullable;

import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.deser.std.StdScalarDeserializer;

/** A day, month or moment is written as text: a number would be taken for days or seconds since 1970. */
final class TextOnly<T> extends StdScalarDeserializer<T> {

    private final Class<T> type;
    private final Function<String, T> parse;

    TextOnly(Class<T> type, Function<String, T> parse) {
        super(type);
        this.type = type;
        this.parse = parse;
    }

    @Override
    public @Nullable T deserialize(JsonParser parser, DeserializationContext context) {
        if (!parser.hasToken(JsonToken.VALUE_STRING)) {
            return type.cast(context.handleUnexpectedToken(type, parser));
        }
        var text = parser.getString().strip();
        try {
            return text.isEmpty() ? null : parse.apply(text);
        } catch (DateTimeException none) {
            return type.cast(context.handleWeirdStringValue(type, text, "not as documented"));
        }
    }
}
