package org.collarbook.platform;

import java.time.Clock;

import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** The one clock; tests set another. */
@Configuration(proxyBeanMethods = false)
class Time {

    @Bean
    Clock clock() {
        return Clock.systemUTC();
    }
}
