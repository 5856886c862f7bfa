package org.collarbook.intake;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;

import org.collarbook.inspection.RequalificationEntry;
import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.Difference;
import org.collarbook.registry.Marks;
import org.collarbook.registry.NewContainer;
import org.collarbook.registry.Ownership;
import org.collarbook.registry.Particulars.Completed;
import org.collarbook.registry.Particulars;
import org.collarbook.registry.RegisteredContainer;
import org.collarbook.registry.Stamped;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/**
 * A row laid over what the register has of the same container. A cell that says something goes before what is recorded;
 * a blank one leaves it. Another way to write the same value is no change.
 *
 * <p>A container rests on one ledger's declaration at most. A later one takes the place of the earlier where it asserts at least
 * as much; where it asserts less, the earlier stays and the remark DECLARATION_KEPT says so.
 */
record Merge(RegisteredContainer before, LedgerEntry row, @Nullable Declaration said) {

    NewContainer after(List<RequalificationEntry> history, Problems problems) {
        var particulars = overlaid(history);
        var earlier = earlier();
        var kept = particulars.completedBy(earlier);
        var tag = row.tag() == null ? before.tag() : row.tag();
        if (said == null) {
            return NewContainer.following(before, marks(), kept.particulars(), tag, before.declaration(),
                    kept.declared());
        }
        var anew = particulars.completedBy(said);
        boolean nothingNew = anew.particulars().completedBy(earlier).particulars().equals(kept.particulars());
        if (!nothingNew && anew.declared().containsAll(kept.declared())) {
            return NewContainer.following(before, marks(), anew.particulars(), tag, said.id(), anew.declared());
        }
        if (!nothingNew) {
            problems.remark(LedgerColumn.SPECIFICATION, "DECLARATION_KEPT", missing(kept, anew).toString(),
                    "a declaration that asserts all that the earlier one did: the earlier stays for this container");
        }
        return NewContainer.following(before, marks(), kept.particulars(), tag, declaration(said), kept.declared());
    }

    private UUID declaration(Declaration later) {
        var earlier = before.declaration();
        return earlier == null ? later.id() : earlier;
    }

    private static Set<DeclarableFact> missing(Completed kept, Completed anew) {
        var missing = new HashSet<>(kept.declared());
        missing.removeAll(anew.declared());
        return missing;
    }

    boolean changes(NewContainer after) {
        return !before.declared().equals(after.declared()) || !Difference.between(before.content(), after).isEmpty();
    }

    private Marks marks() {
        var had = before.marks();
        var given = row.marks();
        var capacity = given.waterCapacity();
        boolean sameCapacity = capacity == null || had.waterCapacity() != null
                && same(had.waterCapacity().value(), capacity.value());
        return new Marks(given.kind(), had.specification(), had.maker(), had.serial(), had.manufactured(),
                sameCapacity ? had.waterCapacity() : capacity, laid(had.tare(), given.tare()),
                given.servicePressure() == null ? had.servicePressure() : given.servicePressure());
    }

    /** 47.6 and 47.60 lb are one capacity. */
    private static boolean same(WaterCapacity one, WaterCapacity other) {
        return one.unit() == other.unit() && one.amount().compareTo(other.amount()) == 0;
    }

    private static <T> @Nullable Stamped<T> laid(@Nullable Stamped<T> had, @Nullable Stamped<T> given) {
        return given == null || had != null && had.value().equals(given.value()) ? had : given;
    }

    private static <T> @Nullable T over(@Nullable T given, @Nullable T had) {
        return given == null ? had : given;
    }

    /** The row over what was read, without what was declared; a collar read before its last test is read no more. */
    private Particulars overlaid(List<RequalificationEntry> history) {
        var given = row.particulars();
        var had = before.particulars().without(before.declared());
        var service = new Service(over(given.service().lading(), had.service().lading()),
                over(given.service().exclusive(), had.service().exclusive()),
                over(given.service().corrosionFree(), had.service().corrosionFree()));
        return new Particulars(over(given.coated(), had.coated()), over(given.lined(), had.lined()),
                over(given.steel(), had.steel()), over(given.installation(), had.installation()),
                over(given.reliefValve(), had.reliefValve()), over(given.use(), had.use()), service, owner(),
                over(given.marksLegible(), had.marksLegible()), permit(given.permit(), had.permit()),
                over(given.extendedPeriod(), had.extendedPeriod()), over(given.schemeDue(), had.schemeDue()),
                over(given.outOfServiceSince(), had.outOfServiceSince()),
                had.collarRead() || given.collarRead() && history.isEmpty());
    }

    private Ownership owner() {
        var given = row.particulars().ownership();
        var had = before.particulars().without(before.declared()).ownership();
        // the word distributor says no less than an owner of that name
        boolean isOwn = Boolean.TRUE.equals(given.owned()) && given.owner() == null
                && Boolean.TRUE.equals(had.owned()) && ParticularsReader.DISTRIBUTOR.equalsIgnoreCase(had.owner());
        boolean isNamed = given.owned() != null && !isOwn
                || given.owner() != null && had.owned() == null && had.owner() == null;
        return new Ownership(isNamed ? given.owned() : had.owned(), isNamed ? given.owner() : had.owner(),
                given.consent() == null && (isOwn || isSameOwner()) ? had.consent() : given.consent());
    }

    /** Of another permit nothing is known but what the row tells. */
    private static @Nullable Permit permit(@Nullable Permit given, @Nullable Permit had) {
        if (given == null || had == null || given.number() != null && !given.number().equals(had.number())) {
            return given == null ? had : given;
        }
        return new Permit(had.number(), over(given.expires(), had.expires()),
                over(given.intervalYears(), had.intervalYears()));
    }

    /** Consent is the owner's own, 49 CFR 173.301(e): it does not pass to the next one. */
    private boolean isSameOwner() {
        var given = row.particulars().ownership();
        var had = before.particulars().ownership();
        return given.owned() == null
                || given.owned().equals(had.owned()) && Objects.equals(given.owner(), had.owner());
    }

    private <T> @Nullable T declared(@Nullable T value, DeclarableFact fact) {
        return before.declared().contains(fact) ? value : null;
    }

    /** What the register has on declaration, as that declaration said it of this container. */
    private Declaration earlier() {
        var had = before.particulars();
        var id = before.declaration();
        return new Declaration(id == null ? before.id() : id, "", LocalDate.EPOCH, "", null,
                declared(had.coated(), DeclarableFact.COATED),
                declared(had.service().lading(), DeclarableFact.LADING),
                declared(had.service().exclusive(), DeclarableFact.EXCLUSIVE),
                declared(had.service().corrosionFree(), DeclarableFact.CORROSION_FREE),
                declared(had.marksLegible(), DeclarableFact.MARKS_LEGIBLE),
                declared(had.ownership().owned(), DeclarableFact.OWNED),
                isSameOwner() ? declared(had.ownership().consent(), DeclarableFact.OWNER_CONSENT) : null, null, null,
                null);
    }
}
