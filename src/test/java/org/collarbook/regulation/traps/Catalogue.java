package org.collarbook.regulation.traps;

/** The two catalogues of traps, each numbered from 1. */
enum Catalogue {
    /** Cylinders and tanks under 49 CFR. */
    US(18),
    /** What other places ask, and what differs from place to place. */
    WORLD(16);

    final int traps;

    Catalogue(int traps) {
        this.traps = traps;
    }
}
