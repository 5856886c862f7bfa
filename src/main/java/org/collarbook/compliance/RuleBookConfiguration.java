package org.collarbook.compliance;

import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Where the rule book meets the application: loaded and checked once, at start. */
@Configuration(proxyBeanMethods = false)
class RuleBookConfiguration {

    @Bean
    RuleBook ruleBook() {
        return RuleBookLoader.standard();
    }
}
