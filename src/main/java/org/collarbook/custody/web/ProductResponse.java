package org.collarbook.custody.web;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.custody.Product;

record ProductResponse(UUID id, int version, String code, String lading, BigDecimal specificGravity,
        String declaredBy, LocalDate declaredOn) {

    static ProductResponse from(Product product) {
        return new ProductResponse(product.id(), product.version(), product.code(), product.lading().name(),
                product.specificGravity(), product.declaredBy(), product.declaredOn());
    }
}
