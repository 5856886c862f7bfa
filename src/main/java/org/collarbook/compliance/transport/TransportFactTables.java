package org.collarbook.compliance.transport;

import org.collarbook.registry.FactTable;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
class TransportFactTables {

    @Bean
    FactTable transportRecordTable() {
        return new FactTable("transport_record");
    }
}
