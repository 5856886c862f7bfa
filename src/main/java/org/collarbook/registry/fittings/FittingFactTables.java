package org.collarbook.registry.fittings;

import org.collarbook.registry.FactTable;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
class FittingFactTables {

    @Bean
    FactTable partTable() {
        return new FactTable("part");
    }

    @Bean
    FactTable outOfServiceTable() {
        return new FactTable("out_of_service");
    }
}
