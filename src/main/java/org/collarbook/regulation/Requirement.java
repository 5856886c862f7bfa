package org.collarbook.regulation;

import static org.collarbook.regulation.Method.EXAMINATION;
import static org.collarbook.regulation.Method.EXTINGUISHER_EMPTIED;
import static org.collarbook.regulation.Method.EXTINGUISHER_INSPECTED;
import static org.collarbook.regulation.Method.EXTINGUISHER_MAINTAINED;
import static org.collarbook.regulation.Method.EXTINGUISHER_PRESSURE_TESTED;
import static org.collarbook.regulation.Method.HOSE_TESTED;
import static org.collarbook.regulation.Method.INTERMEDIATE;
import static org.collarbook.regulation.Method.PERIODIC;
import static org.collarbook.regulation.Method.PROTECTION_INSTALLED;
import static org.collarbook.regulation.Method.PROTECTION_TESTED;
import static org.collarbook.regulation.Method.THOROUGH_EXAMINATION;
import static org.collarbook.regulation.Method.UNLOADING_SYSTEM_INSPECTED;
import static org.collarbook.regulation.Method.VALVE_INSPECTED;
import static org.collarbook.regulation.Method.VALVE_REPLACED;
import static org.collarbook.regulation.Method.VALVE_SERVICED;

import java.util.EnumSet;
import java.util.Set;

/** One clock that runs on a container, and the methods whose records move it. */
public enum Requirement {
    /** The container's own requalification: the newest mark governs whatever its method. */
    SHELL(EnumSet.range(Method.VOLUMETRIC_EXPANSION, Method.INTERMEDIATE)),
    /** The porous filler of an acetylene cylinder. */
    FILLER(Method.SHELL_AND_FILLER),
    /** The visual inspection between two tests, 49 CFR 180.209(f). */
    VISUAL(EnumSet.range(Method.VOLUMETRIC_EXPANSION, Method.INTERMEDIATE)),
    EXTERNAL_VISUAL(Method.V),
    INTERNAL_VISUAL(Method.I),
    LEAKAGE(Method.K),
    PRESSURE(Method.P),
    LINING(Method.L),
    THICKNESS(Method.T),
    PERIODIC_TEST(PERIODIC, Method.P),
    INTERMEDIATE_TEST(PERIODIC, Method.P, INTERMEDIATE),
    TEN_YEAR_EXAMINATION(EXAMINATION, THOROUGH_EXAMINATION),
    TWENTY_YEAR_EXAMINATION(THOROUGH_EXAMINATION),
    /** What a competent person's written scheme of examination says. */
    WRITTEN_SCHEME,
    RELIEF_VALVE(VALVE_REPLACED, VALVE_SERVICED),
    RELIEF_VALVE_VISUAL(VALVE_REPLACED, VALVE_SERVICED, VALVE_INSPECTED),
    DELIVERY_HOSE(HOSE_TESTED),
    UNLOADING_SYSTEM(UNLOADING_SYSTEM_INSPECTED),
    CATHODIC_PROTECTION(PROTECTION_INSTALLED, PROTECTION_TESTED),
    EXTINGUISHER_INSPECTION(EXTINGUISHER_INSPECTED, EXTINGUISHER_MAINTAINED),
    EXTINGUISHER_MAINTENANCE(EXTINGUISHER_MAINTAINED),
    EXTINGUISHER_EMPTYING(EXTINGUISHER_EMPTIED, EXTINGUISHER_PRESSURE_TESTED),
    EXTINGUISHER_PRESSURE_TEST(EXTINGUISHER_PRESSURE_TESTED);

    private final Set<Method> movedBy;
    private final boolean stamped;

    Requirement(Set<Method> movedBy) {
        this.movedBy = movedBy;
        this.stamped = movedBy.stream().anyMatch(method -> method.compareTo(Method.INTERMEDIATE) <= 0);
    }

    Requirement(Method... movedBy) {
        this(movedBy.length == 0 ? EnumSet.noneOf(Method.class) : EnumSet.of(movedBy[0], movedBy));
    }

    public boolean movedBy(Method method) {
        return movedBy.contains(method);
    }

    /** Whether any record could move it, so that an unknown history matters. */
    public boolean hasHistory() {
        return !movedBy.isEmpty();
    }

    /** Whether a record of it is a stamp on the container, which may have lost its suffix. */
    public boolean isStamped() {
        return stamped;
    }

    /** Whether it answers for the container itself; the others run beside, on a part of it or between two tests. */
    public boolean isOfTheContainer() {
        return switch (this) {
            case SHELL, EXTERNAL_VISUAL, INTERNAL_VISUAL, LEAKAGE, PRESSURE, LINING, THICKNESS, PERIODIC_TEST,
                    INTERMEDIATE_TEST, TEN_YEAR_EXAMINATION, TWENTY_YEAR_EXAMINATION, EXTINGUISHER_INSPECTION,
                    EXTINGUISHER_MAINTENANCE, EXTINGUISHER_EMPTYING, EXTINGUISHER_PRESSURE_TEST ->
                true;
            case FILLER, VISUAL, WRITTEN_SCHEME, RELIEF_VALVE, RELIEF_VALVE_VISUAL, DELIVERY_HOSE, UNLOADING_SYSTEM,
                    CATHODIC_PROTECTION ->
                false;
        };
    }

    /** The newest of nearly all records governs. */
    public boolean isOfTheWhole() {
        return this == SHELL || this == VISUAL;
    }
}
