package org.collarbook.platform.web;

import org.springframework.boot.jackson.autoconfigure.JsonMapperBuilderCustomizer;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

import tools.jackson.core.StreamReadFeature;

/** A field told twice in one object is refused: which of the two was meant is anybody's guess. */
@Configuration(proxyBeanMethods = false)
class StrictJson {

    @Bean
    JsonMapperBuilderCustomizer eachFieldOnce() {
        return builder -> builder.enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION);
    }
}
