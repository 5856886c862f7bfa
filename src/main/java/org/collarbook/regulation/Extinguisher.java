package org.collarbook.regulation;

/** The kinds of portable fire extinguisher that 29 CFR 1910.157 Table L-1 tells apart. */
public enum Extinguisher {
    SODA_ACID_STAINLESS_STEEL,
    WATER_CARTRIDGE,
    WATER_STORED_PRESSURE,
    WETTING_AGENT,
    FOAM_STAINLESS_STEEL,
    AQUEOUS_FILM_FORMING_FOAM,
    LOADED_STREAM,
    DRY_CHEMICAL_STAINLESS_STEEL,
    CARBON_DIOXIDE,
    DRY_CHEMICAL_STORED_PRESSURE,
    DRY_CHEMICAL_CARTRIDGE,
    HALON_1211,
    HALON_1301,
    DRY_POWDER_CARTRIDGE,
    /** A shell of copper or brass joined by soft solder or rivets: out of service since 1982. */
    SOLDERED_OR_RIVETED_SHELL
}
