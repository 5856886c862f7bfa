package org.collarbook.custody;

import java.util.UUID;

/** What became of a movement handed in. */
public sealed interface Moving {

    /**
     * Kept as a fact; {@code moved} is false when another movement decides where the container stands, {@code disputed}
     * true when several places claim it now.
     */
    record Recorded(UUID id, boolean moved, boolean disputed) implements Moving {}

    /** The register had it elsewhere than where it is said to have come from: nothing was stored. */
    record Disputed(UUID recordedSite, UUID statedSite) implements Moving {}

    record UnknownContainer() implements Moving {}
}
