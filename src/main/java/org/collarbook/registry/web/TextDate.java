package org.collarbook.registry.web;

import java.time.LocalDate;

import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.ext.javatime.deser.LocalDateDeserializer;

/** A date as text; a number of days or an array of three numbers is read by the library, and by nobody meant. */
final class TextDate extends LocalDateDeserializer {

    @Override
    public LocalDate deserialize(JsonParser parser, DeserializationContext context) {
        return parser.hasToken(JsonToken.VALUE_STRING)
                ? super.deserialize(parser, context)
                : (LocalDate) context.handleUnexpectedToken(LocalDate.class, parser);
    }
}
