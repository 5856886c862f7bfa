package org.collarbook.inspection.bench;

/** What is looked at; the first eight as 49 CFR 180.209(g) names them, the others as the trade does, with no source. */
public enum VisualItem {
    LEAKAGE,
    CORROSION,
    GOUGES,
    DENTS,
    DIGS,
    FOOTRING,
    PROTECTIVE_RING,
    FIRE_DAMAGE,
    CRACKS,
    BULGES,
    CUTS,
    ARC_BURNS,
    WELDS,
    NECK_AND_THREADS,
    MARKS,
    COATING,
    VALVE,
    RELIEF_DEVICE,
    GAUGE,
    HOSE,
    PIPING,
    SUPPORTS,
    LINING,
    MANHOLE,
    /** The note says what. */
    OTHER
}
