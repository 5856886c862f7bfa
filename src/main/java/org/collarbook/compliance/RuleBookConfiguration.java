package org.collarbook.compliance;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;

import org.collarbook.regulation.Retention;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RetentionLoader;
import org.collarbook.regulation.rulebook.RuleBookException;
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

    /**
     * The rules in the folder, or without one those that ship with the service; {@code enable} switches rules on for the
     * whole register that are off by default.
     */
    @Bean
    RuleBook ruleBook(@Value("${collarbook.rules:}") String folder,
            @Value("${collarbook.enable:}") String enabled) {
        var enable = Arrays.stream(enabled.split(",")).map(String::strip).filter(name -> !name.isEmpty())
                .collect(Collectors.toSet());
        if (folder.isBlank()) {
            return shipped(enable);
        }
        var book = new RuleFolder(Path.of(folder)).load(enable);
        log.info("{} rules are taken from {}: rule book {}", book.rules().size(), folder, book.hash());
        return book;
    }

    @Bean
    Retention retention() {
        return RetentionLoader.standard();
    }

    private static RuleBook shipped(Set<String> enable) {
        try {
            return RuleBookLoader.standard(enable);
        } catch (RuleBookException bad) {
            throw new UnusableRulesException("collarbook." + bad.getMessage(), bad);
        }
    }
}
