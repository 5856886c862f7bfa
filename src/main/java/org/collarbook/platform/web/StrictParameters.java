package org.collarbook.platform.web;

import java.time.Instant;
import java.time.LocalDate;
import java.util.function.Function;

import org.collarbook.platform.WrittenTime;
import org.jspecify.annotations.Nullable;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.convert.converter.Converter;
import org.springframework.format.FormatterRegistry;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** A day or moment in a query or path is written as in a body: not as the server's language has it, nor as a number. */
@Configuration(proxyBeanMethods = false)
class StrictParameters implements WebMvcConfigurer {

    @Override
    public void addFormatters(FormatterRegistry registry) {
        registry.addConverter(String.class, LocalDate.class, read(WrittenTime::day));
        registry.addConverter(String.class, Instant.class, read(WrittenTime::moment));
    }

    private static <T> Converter<String, @Nullable T> read(Function<String, T> parse) {
        return text -> text.isBlank() ? null : parse.apply(text.strip());
    }
}
