package org.collarbook.inspection;

import org.collarbook.registry.FactTable;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
class InspectionFactTables {

    @Bean
    FactTable requalificationTable() {
        return new FactTable("requalification");
    }

    @Bean
    FactTable repairTable() {
        return new FactTable("repair");
    }
}
