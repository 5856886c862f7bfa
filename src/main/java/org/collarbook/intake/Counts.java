package org.collarbook.intake;

/** How many rows came to what. Every row read came to something. */
record Counts(long read, long fresh, long changed, long unchanged, long refused, long ambiguous) {

    long notTaken() {
        return refused + ambiguous;
    }
}
