package org.collarbook.regulation;

import org.jspecify.annotations.Nullable;

/**
 * What was done. The first eight are a cylinder's, 49 CFR 180.213(f); the single letters are the tank tests of 49 CFR
 * 180.415; then the tests of portable tanks, and what is done to the parts of a container or beside it.
 */
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
    L,
    T,
    PERIODIC,
    INTERMEDIATE,
    EXAMINATION,
    THOROUGH_EXAMINATION,
    VALVE_REPLACED,
    VALVE_SERVICED,
    VALVE_INSPECTED,
    HOSE_TESTED,
    UNLOADING_SYSTEM_INSPECTED,
    PROTECTION_INSTALLED,
    PROTECTION_TESTED,
    EXTINGUISHER_INSPECTED,
    EXTINGUISHER_MAINTAINED,
    EXTINGUISHER_EMPTIED,
    EXTINGUISHER_PRESSURE_TESTED;

    /** What a requalifier does to the whole cylinder and stamps on it. */
    public boolean isOfCylinder() {
        return compareTo(SHELL_AND_FILLER) <= 0;
    }

    /**
     * Whether a cylinder that passed this is cleared of having failed the other; null is not known. What failed a test of
     * the whole is not cleared by a look from outside: 49 CFR 180.203, "rejected cylinder".
     */
    public boolean clears(@Nullable Method failed) {
        return isOfCylinder() && (isWholeInspection()
                || failed != null && failed.isOfCylinder() && !failed.isWholeInspection());
    }

    /** What failed one of the tests of a tank or of a part passes that test, or is replaced where it is a valve. */
    public boolean answers(@Nullable Method failed) {
        return this == failed || this == VALVE_REPLACED && failed != null && failed.isOfValve();
    }

    public boolean isOfValve() {
        return this == VALVE_REPLACED || this == VALVE_SERVICED || this == VALVE_INSPECTED;
    }

    /** Of the container itself; a part may be older than the container that it is fitted to. */
    public boolean isOfContainer() {
        return compareTo(THOROUGH_EXAMINATION) <= 0;
    }

    /** One of the tests whose letter stands on a tank. */
    public boolean isOfTank() {
        return compareTo(V) >= 0 && compareTo(T) <= 0;
    }

    /** A periodic inspection as a whole; a look alone, and one test among several, are parts of one. */
    public boolean isWholeInspection() {
        return switch (this) {
            case VOLUMETRIC_EXPANSION, PROOF_PRESSURE, ULTRASONIC, ACOUSTIC_EMISSION, SHELL_ONLY, SHELL_AND_FILLER, P,
                    PERIODIC ->
                true;
            default -> false;
        };
    }
}
