package org.collarbook.regulation;

public enum Installation {
    ABOVEGROUND,
    UNDERGROUND
}
