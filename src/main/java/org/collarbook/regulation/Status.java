package org.collarbook.regulation;

/** One word for a person; the first that applies, in this order. */
public enum Status {
    CONDEMNED,
    REJECTED,
    ON_HOLD,
    UNDETERMINED,
    OTHER_AUTHORITY,
    OVERDUE,
    USE_UP,
    DUE_THIS_MONTH,
    IN_DATE,
    NOT_REQUIRED
}
