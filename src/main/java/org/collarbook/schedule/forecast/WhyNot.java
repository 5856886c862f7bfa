package org.collarbook.schedule.forecast;

/** Why nothing, or nothing more, is forecast; of the whole container, or of one requirement. */
enum WhyNot {
    /** The container is out of service for good. */
    CONDEMNED,
    /** The container is rejected until somebody repairs and requalifies it. */
    REJECTED,
    /** A hold stands on the container; when it will be lifted is not known. */
    HELD,
    /** No rule asks for it. */
    NOT_REQUIRED,
    /** A fact that the rule asks for is not known. */
    UNDETERMINED,
    /** The rules of another authority, or of a permit, govern it. */
    OTHER_AUTHORITY,
    /** It falls due in the month that is counted; when it does again no method and no rule tells. */
    NOT_REPEATED
}
