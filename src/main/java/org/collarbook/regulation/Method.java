package org.collarbook.regulation;

/** How a requalification was done; V, I, K and P are the tank tests of 49 CFR 180.415. */
public enum Method {
    VOLUMETRIC_EXPANSION,
    PROOF_PRESSURE,
    EXTERNAL_VISUAL,
    ULTRASONIC,
    EDDY_CURRENT_VISUAL,
    ACOUSTIC_EMISSION,
    SHELL_ONLY,
    SHELL_AND_FILLER,
    V,
    I,
    K,
    P
}
