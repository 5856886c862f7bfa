package org.collarbook.access;

import java.util.Set;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

/** Whose containers and places the caller may see. Reads that can be scoped take it as a parameter. */
public sealed interface CustomerScope {

    CustomerScope EVERYONE = new Everyone();

    /** Staff. */
    record Everyone() implements CustomerScope {}

    /** A portal; where {@code sites} is given, what stands at those of the customer's sites and no others. */
    record Only(CustomerId customer, @Nullable Set<UUID> sites) implements CustomerScope {

        public Only {
            sites = sites == null ? null : Set.copyOf(sites);
            if (sites != null && sites.isEmpty()) {
                throw new IllegalArgumentException("confined to no site, which would be read as to none of them");
            }
        }
    }
}
