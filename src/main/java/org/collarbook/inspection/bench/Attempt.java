package org.collarbook.inspection.bench;

import org.jspecify.annotations.Nullable;

/** An attempt at the test before the one that counts; records keep all tests, those that failed included. */
public record Attempt(int testPressurePsig, @Nullable Expansion expansion, Reason reason, String note) {

    /** What allows another attempt: nothing but this, 49 CFR 180.205(g)(5). */
    public enum Reason {
        APPARATUS_FAILED
    }
}
