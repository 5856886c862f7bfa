package org.collarbook.holds;

/** What can lift a hold. */
public enum LiftedBy {
    /** A passed requalification that is recorded after the hold was placed. */
    REQUALIFICATION,
    /** An inspection by a named person with a stated qualification. */
    COMPETENT_PERSON,
    /** The office, where nothing has to be inspected. */
    CLERK
}
