package org.collarbook.holds;

/** What can lift a hold. */
public enum LiftedBy {
    /** A passed requalification of a later day, or one of the same day of which it is said that it came after. */
    REQUALIFICATION,
    /** An inspection by a named person with a stated qualification. */
    COMPETENT_PERSON,
    /** The office, where nothing has to be inspected. */
    CLERK
}
