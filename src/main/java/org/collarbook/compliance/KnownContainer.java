package org.collarbook.compliance;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;

import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.regulation.Facts;
import org.jspecify.annotations.Nullable;

/**
 * All that is known of one container: what stands in the register, where it is, and the facts the rules ask for.
 * {@code placeDisputed}: other places claim it; of different jurisdictions it is then not known which to ask.
 */
public record KnownContainer(RegisteredContainer container, @Nullable Where where, boolean placeDisputed, Facts facts,
        List<Declarer> declarers) {

    /** The site where it stands. */
    public record Where(UUID siteId, String siteCode, String siteName, ZoneId zone, @Nullable UUID customerId) {}

    /** Who answers for facts that rest on a declaration, and which ones they are. */
    public record Declarer(UUID declaration, String name, LocalDate declaredOn, List<DeclarableFact> facts) {}

    public KnownContainer {
        declarers = List.copyOf(declarers);
    }

    public KnownContainer with(Facts other) {
        return new KnownContainer(container, where, placeDisputed, other, declarers);
    }

    public UUID id() {
        return container.id();
    }
}
