package org.collarbook.registry;

import java.util.Locale;

import org.jspecify.annotations.Nullable;

/** The facts of a container that may rest on somebody's declaration instead of a stamp or a record. */
public enum DeclarableFact {
    COATED,
    LADING,
    EXCLUSIVE,
    CORROSION_FREE,
    MARKS_LEGIBLE,
    OWNED,
    OWNER_CONSENT,
    /** Whose rules govern it, where no site tells; known by the declaration alone. */
    JURISDICTION;

    /** As the database and answers have it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public @Nullable Object of(Particulars known) {
        return switch (this) {
            case COATED -> known.coated();
            case LADING -> known.service().lading();
            case EXCLUSIVE -> known.service().exclusive();
            case CORROSION_FREE -> known.service().corrosionFree();
            case MARKS_LEGIBLE -> known.marksLegible();
            case OWNED -> known.ownership().owned();
            case OWNER_CONSENT -> known.ownership().consent();
            case JURISDICTION -> null;
        };
    }

    /** What the declaration asserts of it; null when nothing. */
    public @Nullable Object of(Declaration said) {
        return switch (this) {
            case COATED -> said.coated();
            case LADING -> said.lading();
            case EXCLUSIVE -> said.exclusive();
            case CORROSION_FREE -> said.corrosionFree();
            case MARKS_LEGIBLE -> said.marksLegible();
            case OWNED -> said.owned();
            case OWNER_CONSENT -> said.ownerConsent();
            case JURISDICTION -> said.jurisdiction();
        };
    }

    static DeclarableFact of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }
}
