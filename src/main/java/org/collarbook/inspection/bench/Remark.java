package org.collarbook.inspection.bench;

import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

/** Why a result is what it is, or what is to be done about it. */
public record Remark(Code code, String text, @Nullable Citation citation) {

    public enum Code {
        EXPANSION_WITHIN_LIMIT,
        EXPANSION_OVER_LIMIT,
        TEST_PRESSURE_SUFFICES,
        TEST_PRESSURE_NOT_CHECKED,
        DEFECT_FOUND,
        NO_DEFECT_FOUND,
        CONDEMNING_GROUND,
        FIRE_EXPOSED,
        TARE_LOSS,
        TARE_NOT_COMPARED,
        TEST_REPEATED
    }
}
