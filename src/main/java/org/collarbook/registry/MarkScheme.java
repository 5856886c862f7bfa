package org.collarbook.registry;

import org.collarbook.regulation.Specification;

/** Under whose system of marks a serial number was given; part of what tells one container from another. */
public enum MarkScheme {
    US,
    CANADA,
    UN,
    ADR,
    ASME;

    public static MarkScheme of(Specification specification) {
        return switch (specification.authority()) {
            case DOT, ICC, SPECIAL_PERMIT -> US;
            case TC, CTC, BTC, CRC -> CANADA;
            case UN -> UN;
            case ADR -> ADR;
            case ASME -> ASME;
        };
    }
}
