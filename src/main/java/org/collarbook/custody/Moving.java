package org.collarbook.custody;

import java.util.UUID;

/** What became of a movement handed in. */
public sealed interface Moving {

    /** Kept as a fact; {@code moved} is false when a later movement already decides where the container stands. */
    record Recorded(UUID id, boolean moved) implements Moving {}

    /** The register had it elsewhere than where it is said to have come from: nothing was stored. */
    record Disputed(UUID recordedSite, UUID statedSite) implements Moving {}

    record UnknownContainer() implements Moving {}
}
