package org.collarbook.regulation;

/** The facts a rule can read; an answer names those it used. */
public enum Fact {
    JURISDICTION("jurisdiction"),
    KIND("kind"),
    SPECIFICATION("specification"),
    MANUFACTURED(
            "manufactured"),
    WATER_CAPACITY("waterCapacity"),
    SERVICE_PRESSURE("servicePressure"),
    COATED(
            "coated"),
    LINED("lined"),
    STEEL("steel"),
    INSTALLATION("installation"),
    MARKS_LEGIBLE(
            "marksLegible"),
    OWNER_CONSENT("ownerConsent"),
    PERMIT("permit"),
    USE("use"),
    LADING(
            "service.lading"),
    EXCLUSIVE("service.exclusive"),
    CORROSION_FREE(
            "service.corrosionFree"),
    RELIEF_VALVE("reliefValve"),
    EXTENDED_PERIOD("extendedPeriod"),
    EXTINGUISHER("extinguisher"),
    SCHEME_DUE("schemeDue"),
    OUT_OF_SERVICE("outOfServiceSince"),
    OVERFILL_PREVENTION("overfillPrevention"),
    LABELLED_FOR("labelledFor"),
    MOVE("move"),
    CONDITION("condition"),
    HOLDS(
            "holds"),
    REQUALIFICATIONS("requalifications"),
    FILLED_ON(
            "filledOn"),
    EMPTIED_ON("emptiedOn");

    private final String field;

    Fact(String field) {
        this.field = field;
    }

    /** The name this fact has in a request. */
    public String field() {
        return field;
    }
}
