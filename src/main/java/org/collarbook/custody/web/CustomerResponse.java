package org.collarbook.custody.web;

import java.util.UUID;

import org.collarbook.custody.NamedCustomer;

record CustomerResponse(UUID id, int version, String code, String name) {

    static CustomerResponse from(NamedCustomer customer) {
        return new CustomerResponse(customer.id(), customer.version(), customer.code(), customer.name());
    }
}
