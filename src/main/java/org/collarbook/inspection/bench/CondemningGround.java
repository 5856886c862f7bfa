package org.collarbook.inspection.bench;

/** Why a cylinder is condemned, where it is not its permanent expansion; 49 CFR 180.205(i) of the edition of 2019. */
public enum CondemningGround {
    CGA_CRITERIA("It meets a condition for condemnation of the CGA standard that applies."),
    LEAK_THROUGH_WALL("It leaks through its wall."),
    WEAKENING_CRACKS("Cracks are likely to weaken it appreciably."),
    ELASTIC_EXPANSION_OF_3HT("The elastic expansion of a DOT-3HT exceeds its marked limit."),
    DENT_OR_BULGE_OF_3HT("A DOT-3HT has a dent or bulge."),
    OVERHEATED_ALUMINIUM("An aluminium or aluminium-lined special permit cylinder was overheated."),
    SPECIAL_PERMIT_LIMIT("A limit of its special permit is exceeded."),
    SERVICE_LIFE_EXPIRED("Its service life is over.");

    private final String text;

    CondemningGround(String text) {
        this.text = text;
    }

    String text() {
        return text;
    }
}
