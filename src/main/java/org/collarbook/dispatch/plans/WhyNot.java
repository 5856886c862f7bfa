package org.collarbook.dispatch.plans;

/** Why a cylinder that must come back, or may have to, is in no visit of the plan. */
enum WhyNot {
    UNDETERMINED("When it is due cannot be told: read its collar."),
    OTHER_AUTHORITY("Another authority's papers decide when it is due, which the register does not know."),
    PLACE_NOT_KNOWN("Where it stands is not recorded."),
    NO_ROUTE("No route calls at its site."),
    NO_VISIT_IN_HORIZON("The routes that call at its site have no visit while the plan runs."),
    NO_VEHICLE("The routes that call at its site have no vehicle."),
    RACK_NOT_KNOWN("How many of its size the vehicles take is not told."),
    SHOP_FULL("In every week that could take it the shop is full."),
    RACK_FULL("At every visit that could take it the rack is full."),
    SHOP_AND_RACK_FULL("At every visit that could take it the rack is full, or the shop in that week.");

    private final String text;

    WhyNot(String text) {
        this.text = text;
    }

    String text() {
        return text;
    }
}
