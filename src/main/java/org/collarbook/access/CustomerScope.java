package org.collarbook.access;

import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** Whose containers and places the caller may see. Reads that can be scoped take it as a parameter. */
public sealed interface CustomerScope {

    CustomerScope EVERYONE = new Everyone();

    /** Staff. */
    record Everyone() implements CustomerScope {}

    /** A portal. */
    record Only(CustomerId customer) implements CustomerScope {}

    default boolean covers(@Nullable UUID customer) {
        return switch (this) {
            case Everyone() -> true;
            case Only(CustomerId own) -> own.value().equals(customer);
        };
    }
}
