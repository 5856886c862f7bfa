package org.collarbook.registry.web;

import java.time.LocalDate;

import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.deser.std.StdDeserializer;
import tools.jackson.databind.ext.javatime.deser.LocalDateDeserializer;

/** A date as text; the library would also take a number of days or an array of three numbers, which nobody means. */
final class TextDate extends StdDeserializer<LocalDate> {

    TextDate() {
        super(LocalDate.class);
    }

    @Override
    public LocalDate deserialize(JsonParser parser, DeserializationContext context) {
        return parser.hasToken(JsonToken.VALUE_STRING)
                ? LocalDateDeserializer.INSTANCE.deserialize(parser, context)
                : (LocalDate) context.handleUnexpectedToken(LocalDate.class, parser);
    }
}
