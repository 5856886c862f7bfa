package org.collarbook.registry;

import java.time.LocalDate;
import java.util.Set;
import java.util.UUID;

import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Method;
import org.jspecify.annotations.Nullable;

/**
 * What a named person asserts for a group of containers where neither stamp nor ledger says it; null is not asserted.
 * {@code bareMonthMethod}: how a last test was done of which only the month is written. {@code blankMeansNone}: a blank
 * history means that the collar was read and bears no later mark.
 */
public record Declaration(UUID id, String declaredBy, LocalDate declaredOn, String statement,
        @Nullable Jurisdiction jurisdiction, @Nullable Boolean coated, @Nullable Lading lading,
        @Nullable Boolean exclusive, @Nullable Boolean corrosionFree, @Nullable Boolean marksLegible,
        @Nullable Boolean owned, @Nullable Boolean ownerConsent, @Nullable Boolean rinSeen,
        @Nullable Method bareMonthMethod, @Nullable Boolean blankMeansNone) {

    /** Nobody's declaration that is kept was made before this day. */
    public static final LocalDate EARLIEST = LocalDate.of(1900, 1, 1);

    /**
     * It was made before the month in which this container is recorded to have been made, so that it says nothing of it.
     * Where the month is not known the declaration counts.
     */
    public boolean isBefore(Marks marks) {
        var made = marks.manufactured();
        return made != null && declaredOn.isBefore(made.value().atDay(1));
    }

    /** The same under another id. */
    public Declaration as(UUID another) {
        return new Declaration(another, declaredBy, declaredOn, statement, jurisdiction, coated, lading, exclusive,
                corrosionFree, marksLegible, owned, ownerConsent, rinSeen, bareMonthMethod, blankMeansNone);
    }

    /** What it asserts of these facts alone. */
    Declaration of(Set<DeclarableFact> facts) {
        return new Declaration(id, declaredBy, declaredOn, statement,
                facts.contains(DeclarableFact.JURISDICTION) ? jurisdiction : null,
                facts.contains(DeclarableFact.COATED) ? coated : null,
                facts.contains(DeclarableFact.LADING) ? lading : null,
                facts.contains(DeclarableFact.EXCLUSIVE) ? exclusive : null,
                facts.contains(DeclarableFact.CORROSION_FREE) ? corrosionFree : null,
                facts.contains(DeclarableFact.MARKS_LEGIBLE) ? marksLegible : null,
                facts.contains(DeclarableFact.OWNED) ? owned : null,
                facts.contains(DeclarableFact.OWNER_CONSENT) ? ownerConsent : null, null, null, null);
    }
}
