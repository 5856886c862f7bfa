package org.collarbook.regulation;

/** How a requalification was done; the single letters are the tank tests of 49 CFR 180.407(c), marked by 180.415. */
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
    P,
    /** The inspection of a lining. */
    L,
    /** The thickness test. */
    T;

    /** One of the tests of a tank, which its mark names by this letter. */
    public boolean isTankTest() {
        return switch (this) {
            case V, I, K, P, L, T -> true;
            default -> false;
        };
    }
}
