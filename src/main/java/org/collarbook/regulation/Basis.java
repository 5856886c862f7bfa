package org.collarbook.regulation;

/** How sure a rule's wording is. */
public enum Basis {
    /** Read in the regulation itself. */
    TEXT,
    /** Read in somebody else's short quotation of it. */
    QUOTED,
    /** Told by a second-hand source. */
    SECONDARY,
    /** What the trade does, with no source. */
    COMMON_PRACTICE,
    /** From memory. */
    MEMORY;

    /** Only these may set a due month or permit something without being asked for by name. */
    public boolean onByDefault() {
        return this == TEXT || this == QUOTED;
    }
}
