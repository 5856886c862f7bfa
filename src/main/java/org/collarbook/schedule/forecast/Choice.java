package org.collarbook.schedule.forecast;

import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;

/** How the cylinders are requalified from now on. */
enum Choice {
    /** Each as it was last; one that never was by the expansion test, which 49 CFR 180.205(g) has where no other is named. */
    AS_LAST(null),
    EXTERNAL_VISUAL(Method.EXTERNAL_VISUAL),
    VOLUMETRIC_EXPANSION(Method.VOLUMETRIC_EXPANSION),
    PROOF_PRESSURE(Method.PROOF_PRESSURE);

    private final @Nullable Method method;

    Choice(@Nullable Method method) {
        this.method = method;
    }

    /** Null where it depends on the cylinder. */
    @Nullable
    Method method() {
        return method;
    }
}
