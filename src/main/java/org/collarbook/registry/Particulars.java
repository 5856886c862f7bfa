package org.collarbook.registry;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.EnumSet;
import java.util.Set;

import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.ReliefValve;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.Use;
import org.jspecify.annotations.Nullable;

/**
 * What is known of a container beside its marks; null is not known. {@code collarRead}: somebody has read the collar, so
 * that no recorded requalification means none is stamped. {@code schemeDue} is the month that a written scheme of
 * examination gives.
 */
public record Particulars(@Nullable Boolean coated, @Nullable Boolean lined, @Nullable Steel steel,
        @Nullable Installation installation, @Nullable ReliefValve reliefValve, @Nullable Use use, Service service,
        Ownership ownership,
        @Nullable Boolean marksLegible, @Nullable Permit permit, @Nullable ExtendedPeriod extendedPeriod,
        @Nullable YearMonth schemeDue, @Nullable LocalDate outOfServiceSince, boolean collarRead) {

    public static final Particulars UNKNOWN = new Particulars(null, null, null, null, null, null,
            Service.UNKNOWN, Ownership.UNKNOWN, null, null, null, null, null, false);

    /** Particulars with what a declaration adds, and which facts rest on it. */
    public record Completed(Particulars particulars, Set<DeclarableFact> declared) {

        public Completed {
            declared = Set.copyOf(declared);
        }
    }

    /** A declaration speaks only where nothing is known; what was read goes before what was declared. */
    public Completed completedBy(Declaration said) {
        var declared = EnumSet.noneOf(DeclarableFact.class);
        var filled = new Particulars(
                choose(coated, said.coated(), DeclarableFact.COATED, declared), lined, steel, installation,
                reliefValve, use,
                new Service(choose(service.lading(), said.lading(), DeclarableFact.LADING, declared),
                        choose(service.exclusive(), said.exclusive(), DeclarableFact.EXCLUSIVE, declared),
                        choose(service.corrosionFree(), said.corrosionFree(), DeclarableFact.CORROSION_FREE, declared)),
                new Ownership(choose(ownership.owned(), said.owned(), DeclarableFact.OWNED, declared),
                        ownership.owner(),
                        choose(ownership.consent(), said.ownerConsent(), DeclarableFact.OWNER_CONSENT, declared)),
                choose(marksLegible, said.marksLegible(), DeclarableFact.MARKS_LEGIBLE, declared), permit,
                extendedPeriod, schemeDue, outOfServiceSince, collarRead);
        return new Completed(filled, declared);
    }

    /** As if nobody knew these facts. */
    public Particulars without(Set<DeclarableFact> facts) {
        return new Particulars(unless(facts, DeclarableFact.COATED, coated), lined, steel, installation, reliefValve,
                use, new Service(unless(facts, DeclarableFact.LADING, service.lading()),
                        unless(facts, DeclarableFact.EXCLUSIVE, service.exclusive()),
                        unless(facts, DeclarableFact.CORROSION_FREE, service.corrosionFree())),
                new Ownership(unless(facts, DeclarableFact.OWNED, ownership.owned()), ownership.owner(),
                        unless(facts, DeclarableFact.OWNER_CONSENT, ownership.consent())),
                unless(facts, DeclarableFact.MARKS_LEGIBLE, marksLegible), permit, extendedPeriod, schemeDue,
                outOfServiceSince, collarRead);
    }

    private static <T> @Nullable T unless(Set<DeclarableFact> facts, DeclarableFact fact, @Nullable T value) {
        return facts.contains(fact) ? null : value;
    }

    private static <T> @Nullable T choose(@Nullable T known, @Nullable T said, DeclarableFact fact,
            Set<DeclarableFact> declared) {
        if (known == null && said != null) {
            declared.add(fact);
            return said;
        }
        return known;
    }
}
