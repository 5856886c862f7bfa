package org.collarbook.platform.web;

import java.util.List;

import org.springframework.context.annotation.Configuration;
import org.springframework.http.MediaType;
import org.springframework.http.converter.HttpMessageConverter;
import org.springframework.web.servlet.config.annotation.ContentNegotiationConfigurer;
import org.springframework.web.servlet.config.annotation.WebMvcConfigurer;

/** An answer's format is chosen by {@code Accept}, or by {@code ?format=} where only a link can be given. */
@Configuration(proxyBeanMethods = false)
class Formats implements WebMvcConfigurer {

    static final String PARAMETER = "format";

    @Override
    public void configureContentNegotiation(ContentNegotiationConfigurer configurer) {
        configurer.favorParameter(true).parameterName(PARAMETER).useRegisteredExtensionsOnly(true)
                .mediaType("json", MediaType.APPLICATION_JSON).mediaType("csv", new MediaType("text", "csv"))
                .mediaType("pdf", MediaType.APPLICATION_PDF).mediaType("ics", new MediaType("text", "calendar"))
                .mediaType("xlsx", new MediaType("application",
                        "vnd.openxmlformats-officedocument.spreadsheetml.sheet"));
    }

    /** A library brings converters for other formats along: a body is JSON or a file, as documented. */
    @Override
    @SuppressWarnings("removal")
    public void extendMessageConverters(List<HttpMessageConverter<?>> converters) {
        converters.removeIf(converter -> converter.getSupportedMediaTypes().stream()
                .anyMatch(type -> type.getSubtype().contains("yaml")));
    }
}
