package org.collarbook.regulation;

/** Readings beside the text that a caller must ask for by name. */
public enum Policy {
    /** 85 FR 68790 allowed its periods from its publication, 2020-10-30, before they took effect. */
    VOLUNTARY_HM_219B,
    /** The enforcement notice of March 2017 tolerated the older twelve years; it is discretion, not text. */
    DISCRETION_2017
}
