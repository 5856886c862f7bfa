package org.collarbook.registry;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Set;
import java.util.UUID;

import org.collarbook.platform.Inputs;
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

    /** The day of one as a request tells it; refused where it cannot be, by the clock of where the day begins first. */
    public static @Nullable LocalDate day(String pointer, @Nullable LocalDate given, Clock clock, Inputs inputs) {
        var on = inputs.present(pointer, given, "the day of the declaration, YYYY-MM-DD");
        if (on != null && on.isAfter(LocalDate.now(clock.withZone(ZoneOffset.ofHours(14))))) {
            inputs.refuse(pointer, "IN_THE_FUTURE", on.toString(), "a day that has begun");
        } else if (on != null && on.isBefore(EARLIEST)) {
            inputs.refuse(pointer, "OUT_OF_RANGE", on.toString(), "not before " + EARLIEST);
        }
        return on;
    }

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
