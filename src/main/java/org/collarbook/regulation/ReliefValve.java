package org.collarbook.regulation;

/** Where the pressure relief valve of a tank sits. */
public enum ReliefValve {
    INTERNAL,
    EXTERNAL
}
