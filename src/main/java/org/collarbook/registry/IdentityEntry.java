package org.collarbook.registry;

import java.util.UUID;

/** One act about which container a record is. */
public sealed interface IdentityEntry {

    UUID id();

    record Corrected(Correction correction) implements IdentityEntry {

        @Override
        public UUID id() {
            return correction.id();
        }
    }

    record Acted(IdentityAct act) implements IdentityEntry {

        @Override
        public UUID id() {
            return act.id();
        }
    }
}
