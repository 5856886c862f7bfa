package org.collarbook.regulation;

/** What a move by road is for. */
public enum Purpose {
    DELIVERY,
    TO_OWNER,
    TO_REQUALIFIER,
    TO_SCRAP
}
