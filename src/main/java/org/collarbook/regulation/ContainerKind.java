package org.collarbook.regulation;

public enum ContainerKind {
    CYLINDER,
    CARGO_TANK,
    PORTABLE_TANK,
    STATIONARY_TANK
}
