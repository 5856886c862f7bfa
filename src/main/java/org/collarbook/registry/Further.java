package org.collarbook.registry;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;

/**
 * The facts of a container that rest on declarations of their own, beside the one that it was registered under.
 * {@code jurisdiction}: whose rules govern it where no site tells, as one of them says.
 */
public record Further(Map<DeclarableFact, UUID> declared, @Nullable Jurisdiction jurisdiction) {

    public static final Further NONE = new Further(Map.of(), null);

    public Further {
        declared = Map.copyOf(declared);
        if ((jurisdiction != null) != declared.containsKey(DeclarableFact.JURISDICTION)) {
            throw new IllegalArgumentException("a jurisdiction is declared, or none is");
        }
    }

    /** What of these facts rests on one of them. */
    Further of(Set<DeclarableFact> facts) {
        var kept = new HashMap<>(declared);
        kept.keySet().retainAll(facts);
        return new Further(kept, kept.containsKey(DeclarableFact.JURISDICTION) ? jurisdiction : null);
    }

    /** With what another declaration adds. */
    Further with(Declaration said, Set<DeclarableFact> facts) {
        var all = new HashMap<>(declared);
        facts.forEach(fact -> all.put(fact, said.id()));
        return new Further(all, facts.contains(DeclarableFact.JURISDICTION) ? said.jurisdiction() : jurisdiction);
    }

    /** The facts that rest on this declaration. */
    Set<DeclarableFact> restingOn(UUID declaration) {
        var resting = new HashSet<DeclarableFact>();
        declared.forEach((fact, by) -> {
            if (by.equals(declaration)) {
                resting.add(fact);
            }
        });
        return resting;
    }
}
