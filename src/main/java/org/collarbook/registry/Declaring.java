package org.collarbook.registry;

import java.util.EnumSet;
import java.util.HashSet;
import java.util.Set;
import java.util.UUID;

import org.collarbook.regulation.Jurisdiction;
import org.jspecify.annotations.Nullable;

/**
 * What a declaration does to one container: the facts that it fills, those that are known the same already, and those of
 * which the register says otherwise, which stay as they are. None of these, where the container was made after the day of
 * the declaration.
 */
public record Declaring(NewContainer after, Set<DeclarableFact> filled, Set<DeclarableFact> known,
        Set<DeclarableFact> contradicting) {

    public Declaring {
        filled = Set.copyOf(filled);
        known = Set.copyOf(known);
        contradicting = Set.copyOf(contradicting);
    }

    /**
     * {@code governedBy}: whose rules are known to govern it; {@code placed}: a site tells that, so that nobody else does,
     * even where several sites tell different ones.
     */
    public static Declaring of(RegisteredContainer before, Declaration said, @Nullable Jurisdiction governedBy,
            boolean placed) {
        if (said.isBefore(before.marks())) {
            return new Declaring(before.content(), Set.of(), Set.of(), Set.of());
        }
        var filled = EnumSet.noneOf(DeclarableFact.class);
        var known = EnumSet.noneOf(DeclarableFact.class);
        var contradicting = EnumSet.noneOf(DeclarableFact.class);
        for (var fact : DeclarableFact.values()) {
            var told = fact.of(said);
            boolean governs = fact == DeclarableFact.JURISDICTION;
            var had = governs ? governedBy : fact.of(before.particulars());
            if (told == null) {
                continue;
            }
            if (had == null && !(governs && placed) && !isElses(fact, before.particulars().ownership(), told)) {
                filled.add(fact);
            } else if (told.equals(had)) {
                known.add(fact);
            } else {
                contradicting.add(fact);
            }
        }
        return new Declaring(before.content().declared(said, filled), filled, known, contradicting);
    }

    /** Somebody is recorded as its owner: nobody declares it the distributor's own beside that. */
    private static boolean isElses(DeclarableFact fact, Ownership recorded, Object told) {
        return fact == DeclarableFact.OWNED && recorded.owner() != null && Boolean.TRUE.equals(told);
    }

    /** A container once a declaration is withdrawn: what still rests on it is not known. */
    public static NewContainer withdrawn(RegisteredContainer before, UUID declaration) {
        var gone = before.further().restingOn(declaration);
        var declared = new HashSet<>(before.declared());
        declared.removeAll(gone);
        return new NewContainer(before.marks(), before.particulars().without(gone), before.tag(),
                before.declaration(), declared, before.further().of(declared));
    }
}
