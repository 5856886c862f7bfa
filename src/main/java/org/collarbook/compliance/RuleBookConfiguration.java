package org.collarbook.compliance;

import java.nio.file.Path;

import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Where the rule book meets the application: loaded and checked once, at start. */
@Configuration(proxyBeanMethods = false)
class RuleBookConfiguration {

    private static final Logger log = LoggerFactory.getLogger(RuleBookConfiguration.class);

    /** The rules in the folder, or without one those that ship with the service. */
    @Bean
    RuleBook ruleBook(@Value("${collarbook.rules:}") String folder) {
        if (folder.isBlank()) {
            return RuleBookLoader.standard();
        }
        var book = new RuleFolder(Path.of(folder)).load();
        log.info("{} rules are taken from {}: rule book {}", book.rules().size(), folder, book.hash());
        return book;
    }
}
