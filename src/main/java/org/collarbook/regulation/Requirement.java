package org.collarbook.regulation;

import java.util.EnumSet;
import java.util.Set;

/** One clock that runs on a container, and the methods whose records move it. */
public enum Requirement {
    /** The cylinder's own requalification: the newest mark governs whatever its method. */
    SHELL(EnumSet.allOf(Method.class)),
    /** The porous filler of an acetylene cylinder. */
    FILLER(EnumSet.of(Method.SHELL_AND_FILLER)),
    /** The visual inspection between two tests, 49 CFR 180.209(f). */
    VISUAL(EnumSet.allOf(Method.class)),
    EXTERNAL_VISUAL(EnumSet.of(Method.V)),
    INTERNAL_VISUAL(
            EnumSet.of(Method.I)),
    LEAKAGE(EnumSet.of(Method.K)),
    PRESSURE(EnumSet.of(Method.P)),
    RELIEF_VALVE(
            EnumSet.noneOf(Method.class)),
    DELIVERY_HOSE(
            EnumSet.noneOf(Method.class)),
    CATHODIC_PROTECTION(EnumSet.noneOf(Method.class));

    private final Set<Method> movedBy;

    Requirement(Set<Method> movedBy) {
        this.movedBy = movedBy;
    }

    public boolean movedBy(Method method) {
        return movedBy.contains(method);
    }

    /** Whether any record could move it, so that an unknown history matters. */
    public boolean hasHistory() {
        return !movedBy.isEmpty();
    }

    /** A record of unknown method may belong to it. */
    public boolean movedByAny() {
        return movedBy.size() == Method.values().length;
    }
}
