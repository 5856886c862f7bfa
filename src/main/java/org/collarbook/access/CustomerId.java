package org.collarbook.access;

import java.util.UUID;

/** Names a customer where access is decided, without knowing what else a customer is. */
public record CustomerId(UUID value) {

    @Override
    public String toString() {
        return value.toString();
    }
}
