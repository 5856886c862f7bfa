package org.collarbook.regulation;

public enum Use {
    FUEL,
    FIRE_EXTINGUISHER,
    SCUBA,
    AIRCRAFT,
    INDUSTRIAL_TRUCK,
    HOT_AIR_BALLOON
}
