package org.collarbook.regulation;

import org.jspecify.annotations.Nullable;

/** What the container holds, whether nothing else, and whether it is commercially free of corroding components. */
public record Service(@Nullable Lading lading, @Nullable Boolean exclusive, @Nullable Boolean corrosionFree) {

    public static final Service UNKNOWN = new Service(null, null, null);
    /** Exclusive LP-gas service, free of corroding components. */
    public static final Service LPG = new Service(Lading.LPG, true, true);
}
