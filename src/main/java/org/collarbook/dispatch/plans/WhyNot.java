package org.collarbook.dispatch.plans;

/** Why a cylinder that must come back, or may have to, is in no visit of the plan. */
enum WhyNot {
    /** When it is due cannot be told: read its collar. */
    UNDETERMINED,
    OTHER_AUTHORITY,
    /** Where it stands is not recorded. */
    PLACE_NOT_KNOWN,
    /** No route calls at its site. */
    NO_ROUTE,
    NO_VISIT_IN_HORIZON,
    /** The routes that call there have no vehicle. */
    NO_VEHICLE,
    /** How many of its size the vehicles take is not told. */
    RACK_NOT_KNOWN,
    /** In every week that could take it the shop is full. */
    SHOP_FULL,
    /** At every visit that could take it the rack is full. */
    RACK_FULL,
    /** At every visit that could take it one of the two is full. */
    SHOP_AND_RACK_FULL
}
