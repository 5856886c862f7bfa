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
    WORKING_PRESSURE,
    TEST_PRESSURE,
    /** CONDEMNED or a series of X's: never to be filled again, 49 CFR 180.205. */
    CONDEMNED,
    /** A word such as REJECTED or SCRAP that somebody has put on it. */
    REJECTED,
    /** Several of them on one line, as 49 CFR 178.35(f) and the UN marks have them. */
    COLLAR
}
