package org.collarbook.holds;

import org.collarbook.registry.FactTable;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
class HoldFactTables {

    @Bean
    FactTable holdTable() {
        return new FactTable("hold");
    }
}
