package org.collarbook.platform.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;

import org.collarbook.platform.WrittenTime;
import org.springframework.boot.jackson.autoconfigure.JsonMapperBuilderCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JacksonModule;
import tools.jackson.databind.module.SimpleModule;

/**
 * A field told twice in one object is refused: which of the two was meant is anybody's guess. A number is what was
 * written, not the nearest binary fraction or a whole part of it, and never a day.
 */
@Configuration(proxyBeanMethods = false)
class StrictJson {

    @Bean
    JsonMapperBuilderCustomizer eachFieldOnceAndAsWritten() {
        return builder -> builder.enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
                .disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT).addModule(days());
    }

    private static JacksonModule days() {
        return new SimpleModule("days as text")
                .addDeserializer(LocalDate.class, new TextOnly<>(LocalDate.class, WrittenTime::day))
                .addDeserializer(YearMonth.class, new TextOnly<>(YearMonth.class, WrittenTime::month))
                .addDeserializer(Instant.class, new TextOnly<>(Instant.class, WrittenTime::moment));
    }
}
