package org.collarbook.access;

import java.util.Set;
import java.util.UUID;

/** Who is calling; controllers take it as a parameter. */
public record Caller(UUID id, String name, Set<Role> roles, CustomerScope scope) {

    public Caller {
        roles = Set.copyOf(roles);
    }
}
