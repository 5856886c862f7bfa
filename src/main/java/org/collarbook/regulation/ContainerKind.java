package org.collarbook.regulation;

public enum ContainerKind {
    CYLINDER,
    CARGO_TANK,
    PORTABLE_TANK,
    STATIONARY_TANK,
    /** The portable fire extinguisher that stands beside a tank: assessed with its site, never registered as a container. */
    EXTINGUISHER
}
