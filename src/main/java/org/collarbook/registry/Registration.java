package org.collarbook.registry;

import java.util.List;
import java.util.UUID;

/** What became of a container handed in for registration. */
public sealed interface Registration {

    record Registered(UUID id) implements Registration {}

    /** The marks are already in the register: never merged, the person decides. */
    record SameNaturalKey(RegisteredContainer other, List<Difference> toldApartBy) implements Registration {}

    record TagInUse(RegisteredContainer other) implements Registration {}
}
