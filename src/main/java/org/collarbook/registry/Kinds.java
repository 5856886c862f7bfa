package org.collarbook.registry;

import java.util.EnumSet;
import java.util.Set;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Specification;

/** Which kinds of container a specification can be stamped on. */
public final class Kinds {

    private Kinds() {}

    public static Set<ContainerKind> of(Specification specification) {
        return switch (specification.authority()) {
            // old bobtails are ASME tanks on wheels, 49 CFR 173.315(k)
            case ASME -> EnumSet.of(ContainerKind.STATIONARY_TANK, ContainerKind.CARGO_TANK,
                    ContainerKind.PORTABLE_TANK);
            case UN -> un(specification);
            case SPECIAL_PERMIT -> EnumSet.complementOf(EnumSet.of(ContainerKind.EXTINGUISHER));
            case ADR -> EnumSet.of(ContainerKind.CYLINDER);
            case DOT, ICC, CRC, BTC, CTC, TC -> byFamily(specification.family());
        };
    }

    /** T codes are portable tank instructions, ISO numbers are cylinder designs; a bare UN mark may be either. */
    private static Set<ContainerKind> un(Specification specification) {
        var detail = specification.detail();
        if (detail == null) {
            return EnumSet.of(ContainerKind.CYLINDER, ContainerKind.PORTABLE_TANK);
        }
        return EnumSet.of(detail.startsWith("T") ? ContainerKind.PORTABLE_TANK : ContainerKind.CYLINDER);
    }

    private static Set<ContainerKind> byFamily(String family) {
        return switch (family) {
            case "MC-306", "MC-307", "MC-312", "MC-330", "MC-331", "MC-338", "331", "338", "406", "407", "412" ->
                EnumSet
                        .of(ContainerKind.CARGO_TANK);
            case "51", "56", "57", "60", "IM-101", "IM-102" -> EnumSet.of(ContainerKind.PORTABLE_TANK);
            // a certificate of equivalency, like a special permit, may be for any of them
            case "SU" -> EnumSet.allOf(ContainerKind.class);
            default -> EnumSet.of(ContainerKind.CYLINDER);
        };
    }
}
