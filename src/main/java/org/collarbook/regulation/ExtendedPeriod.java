package org.collarbook.regulation;

/** A longer period granted to a group of cylinders: a status that is recorded and can be lost, no property of a design. */
public enum ExtendedPeriod {
    /** ADR P200(12), granted by the authority to the owner. */
    P15Y,
    /** A British filling scheme under the trade's code of practice 31. */
    COP31,
    /** Special provision v of P200, approved by the authorities of inspection and carriage. */
    SPECIAL_PROVISION_V,
    /** ADR P200(3)(d), by the body that approved the type of a composite receptacle. */
    TYPE_APPROVAL,
    /** None stands, or it was lost. */
    NONE
}
