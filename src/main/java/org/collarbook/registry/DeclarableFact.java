package org.collarbook.registry;

/** The facts of a container that may rest on somebody's declaration instead of a stamp or a record. */
public enum DeclarableFact {
    COATED, LADING, EXCLUSIVE, CORROSION_FREE, MARKS_LEGIBLE, OWNED, OWNER_CONSENT;

    /** As the database and answers have it. */
    public String word() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }

    static DeclarableFact of(String word) {
        return valueOf(word.toUpperCase(java.util.Locale.ROOT));
    }
}
