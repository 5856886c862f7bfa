package org.collarbook.custody;

import org.collarbook.registry.FactTable;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
class CustodyFactTables {

    @Bean
    FactTable movementTable() {
        return new FactTable("movement");
    }

    @Bean
    FactTable sightingTable() {
        return new FactTable("sighting");
    }

    @Bean
    FactTable fillTable() {
        return new FactTable("fill");
    }

    @Bean
    FactTable emptyingTable() {
        return new FactTable("emptying");
    }

    @Bean
    FactTable readingTable() {
        return new FactTable("reading");
    }
}
