package org.collarbook.intake;

import java.util.EnumSet;
import java.util.Set;
import java.util.UUID;

import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.Declaration;

/** What a row says a named person declared: the words with no id yet, and the facts of this container that rest on them. */
record RowDeclaration(Declaration said, Set<DeclarableFact> facts) {

    static final UUID NO_ID = new UUID(0, 0);

    /** In the order of the facts, so that two rows that say the same are written alike. */
    RowDeclaration {
        facts = facts.isEmpty() ? Set.of() : EnumSet.copyOf(facts);
    }
}
