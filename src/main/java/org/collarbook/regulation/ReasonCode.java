package org.collarbook.regulation;

/** Why an answer is what it is: a stable code with the sentence a person reads. */
public enum ReasonCode {
    MISSING_JURISDICTION("The jurisdiction is not known."),
    MISSING_KIND(
            "It is not known what kind of container this is."),
    MISSING_SPECIFICATION(
            "The specification is not known."),
    MISSING_MANUFACTURED(
            "The month of the original test is not known."),
    MISSING_WATER_CAPACITY(
            "The water capacity is not known."),
    MISSING_SERVICE_PRESSURE(
            "The marked service pressure is not known."),
    MISSING_SPECIFIC_GRAVITY(
            "The specific gravity of the liquid at 60 °F is not known."),
    MISSING_TARE(
            "The tare weight is not known."),
    MISSING_COATED(
            "It is not known whether the outside bears a corrosion-resistant coating."),
    MISSING_LINED(
            "It is not known whether the inside is lined."),
    MISSING_STEEL(
            "The kind of steel is not known."),
    MISSING_CONSTRUCTION(
            "The construction (steel, composite) or the design standard is not known."),
    MISSING_INSTALLATION(
            "It is not known whether the tank stands above or below ground."),
    MISSING_MARKS_LEGIBLE(
            "It is not recorded that the required marks are legible."),
    MISSING_OWNER_CONSENT(
            "It is not recorded that the owner fills it or consents."),
    MISSING_USE(
            "What the container is used for is not known."),
    MISSING_LADING(
            "The lading is not known."),
    MISSING_EXCLUSIVE(
            "It is not known whether the service is exclusive to this lading."),
    MISSING_CORROSION_FREE(
            "It is not known whether the lading is free of corroding components."),
    MISSING_RELIEF_VALVE(
            "It is not known whether the relief valve is internal or external."),
    MISSING_OVERFILL_PREVENTION(
            "It is not known whether an overfilling prevention device is fitted."),
    MISSING_EXTINGUISHER(
            "The kind of fire extinguisher is not known."),
    MISSING_SCHEME_DUE(
            "The month that the written scheme of examination gives is not recorded."),
    MISSING_RECORD(
            "No record of this inspection or test is known."),
    MISSING_CONDITION(
            "It is not recorded that anybody looked at the container's condition."),
    MISSING_HOLDS(
            "It is not known whether a hold stands."),
    MISSING_REQUALIFICATIONS(
            "The requalification history is not known."),
    MISSING_METHOD(
            "The newest requalification has a month but no method."),
    MISSING_PERMIT(
            "The permit's interval, number or expiry is not recorded."),
    MISSING_FILL(
            "No fill on or before the due month is recorded."),
    MISSING_EMPTIED(
            "It is not known to be empty."),
    MISSING_PERCENT_FULL(
            "How full the tank is is not known."),
    MISSING_PURPOSE(
            "The purpose of the move is not known."),
    CONDEMNED(
            "The container is condemned for good."),
    SERVICE_LIFE_OVER(
            "The service life of the specification is over."),
    REJECTED(
            "The container is rejected until it is repaired and requalified."),
    ON_HOLD(
            "A hold stands."),
    OTHER_AUTHORITY(
            "The rules of another authority or of a permit govern it."),
    PERMIT_EXPIRED(
            "The permit has expired."),
    OVERDUE(
            "The due month has passed; past its date nothing is put in, topping off included."),
    DUE_THIS_MONTH(
            "It falls due this month, and counts as in date through the month's last day."),
    USE_UP(
            "Filled before it fell due: it may stay in use and be carried until emptied."),
    FILLED_WHILE_OVERDUE(
            "The latest fill was made after the due month."),
    EMPTIED_SINCE_FILL(
            "It was emptied on or after the day of the latest fill."),
    FILL_NOT_JUDGED(
            "What was due on the day of the latest fill cannot be determined."),
    RIN_NOT_RECORDED(
            "The newest mark is later than May 2004 and its RIN is not recorded."),
    METHOD_NOT_ACCEPTED(
            "No rule held accepts the newest mark's method on this container in this service."),
    CONTRADICTORY_FACTS(
            "A requalification is dated before the month of manufacture."),
    FACT_AFTER_AS_OF(
            "A fact dated after the day asked about was left out."),
    RULE_OFF(
            "A rule that would apply is switched off: its text was not read, or there is none. The register applies it only where it is switched on by name."),
    CURRENT_TEXT_NOT_READ(
            "A later amendment of the section is known and was not read."),
    READINGS_DIFFER(
            "The text and those who apply it read this limit differently: ask the authority having jurisdiction."),
    EARLY_PROOF_TEST(
            "A proof test before the first twelve years were over could be read to last longer; the shorter is taken."),
    EXTENSION_IGNORED(
            "A longer period is recorded that this design cannot have: it is ignored, and the record is to be looked at."),
    FOR_EXPORT_ALONE(
            "A foreign cylinder may be filled and shipped solely for export, on conditions that are not held here."),
    MATERIAL_NOT_SHOWN(
            "The ten-year period is for NQT steel SA-612, or SA-202 and SA-455 with Charpy data; which it is is not recorded here."),
    FOR_PROPANE_ALONE(
            "The ten-year period is for propane alone: another LP-gas in the tank ends it."),
    OUT_OF_SERVICE(
            "It has been out of service for a year or more: it must be tested before it goes back."),
    NOT_TO_BE_MOVED(
            "A stationary tank travels only as its size, how full it is and the purpose of the move allow."),
    STILL_ALLOWED(
            "Past its date this is still allowed."),
    NO_RULE_HELD(
            "No rule is held for this."),
    NOT_REFILLABLE(
            "The specification is not refillable."),
    SPECIFICATION_NOT_AUTHORISED(
            "The specification is not authorised for the lading."),
    SERVICE_PRESSURE_TOO_LOW(
            "The marked service pressure does not suffice for the lading."),
    MARKS_NOT_LEGIBLE(
            "The required marks are not legible."),
    OWNER_CONSENT_REFUSED(
            "The owner has not consented to the fill."),
    NO_OVERFILL_PREVENTION(
            "No overfilling prevention device is fitted."),
    RELIEF_VALVE_REMOVED(
            "The relief valve was taken out, and none is recorded in its place."),
    LEAK_CHECK_NOT_RECORDED(
            "It is not recorded that the valve was checked for leaks after the fill."),
    LEAK_FOUND(
            "It was found to leak."),
    TRAINING_NOT_RECORDED(
            "No training of the filler is recorded as of that day: whoever is not trained fills under the direct supervision of somebody who is."),
    TRAINING_EXPIRED(
            "The filler's training had expired on that day: it is to be repeated at least every three years."),
    DAMAGED(
            "Damage is recorded: it must be repaired and requalified first."),
    OVERHEATED(
            "It was overheated: it must be requalified first."),
    FIRE_EXPOSED(
            "It was exposed to fire: it must be requalified first."),
    TARE_LOSS(
            "It has lost 5 % or more of its tare weight: it must be requalified first."),
    SPECIFIC_GRAVITY_OUT_OF_TABLE(
            "The specific gravity is outside the filling density table."),
    PRESSURE_NOT_KNOWN_FOR_GRAVITY(
            "The vapour pressure of so light a liquid is not held here, nor whether the cylinder withstands it: have the specific gravity at 60 °F confirmed by the supplier."),
    CAPACITY_NOT_OF_SPECIFICATION(
            "The recorded water capacity is more than this specification can have (1,000 lb nominal): read the collar again, its unit too, and correct the marks."),
    CAPACITY_CONTRADICTS_TARE(
            "The recorded water capacity and tare cannot both be those of one cylinder: read both on the collar again, their units too, and correct the marks."),
    OVER_LIMIT(
            "What is in it after the fill is more than may be in it."),
    PRODUCT_NOT_OF_SERVICE(
            "The product is not what the container is recorded to be in service for."),
    PRODUCT_UNKNOWN(
            "The product that was told is not one of the register's."),
    NOT_LOOKED_AT(
            "It is not told that it was looked at before it was filled."),
    VOLUME_NOT_CORRECTED(
            "No volume correction is held for this specific gravity and temperature."),
    PLACE_DISPUTED(
            "Several places claim it: where it stands is not known until somebody has looked."),
    OTHER_SIZE(
            "It is of another size than the one taken away."),
    DUE_BEFORE_VISITS(
            "Its last day comes before the site's visit after next."),
    ON_LIGHTER_LIQUID(
            "A lighter liquid may be inside still: the limit is that of the lighter one until it is told how much was"
                    + " left, or that it was emptied."),
    MARKS_DISPUTED(
            "The marks as read contradict what is recorded."),
    MARKS_NOT_RECORDED(
            "The marks as read tell what is not recorded."),
    MARKS_NOT_READ(
            "A line of the marks was not read."),
    NO_TANK_AT_SITE(
            "No stationary tank is recorded at the site."),
    EXTINGUISHER_REQUIRED(
            "A tank of the site asks for a fire extinguisher of a stated rating."),
    EXTINGUISHER_RECOMMENDED(
            "A fire extinguisher is recommended beside a tank of this size, not required."),
    NO_EXTINGUISHER(
            "No fire extinguisher is recorded at the site."),
    NO_EXTINGUISHER_SUFFICES(
            "None of the site's fire extinguishers is known to be both rated high enough and kept up."),
    MISSING_RATING(
            "The B:C rating of the extinguisher is not known."),
    RATING_TOO_LOW(
            "The B:C rating of the extinguisher is lower than asked for."),
    EXTINGUISHER_OVERDUE(
            "An inspection, maintenance, emptying or test of the extinguisher is overdue."),
    EXTINGUISHER_OUT_OF_SERVICE(
            "The extinguisher may not be pressure tested and belongs out of service.");

    private final Reason reason;

    ReasonCode(String text) {
        this.reason = new Reason(this, text, null);
    }

    public Reason reason() {
        return reason;
    }

    public String text() {
        return reason.text();
    }

    public Reason citing(Citation citation) {
        return new Reason(this, reason.text(), citation);
    }
}
