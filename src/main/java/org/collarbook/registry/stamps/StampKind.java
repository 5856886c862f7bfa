package org.collarbook.registry.stamps;

/** What a line of a collar or data plate may be. */
public enum StampKind {
    SPECIFICATION,
    /** The month of the original test. */
    MANUFACTURED,
    REQUALIFICATION,
    WATER_CAPACITY,
    TARE,
    TAG,
    SERIAL,
    MAKER,
    /** Several of them on one line, as 49 CFR 178.35(f) has them. */
    COLLAR
}
