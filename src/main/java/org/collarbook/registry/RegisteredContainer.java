package org.collarbook.registry;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.regulation.Facts;
import org.collarbook.regulation.FactsBuilder;
import org.jspecify.annotations.Nullable;

/** A container as it stands in the register. */
public record RegisteredContainer(UUID id, int version, Marks marks, Particulars particulars, Size size,
        @Nullable Tag tag, @Nullable UUID declaration, Set<DeclarableFact> declared, Further further,
        Instant registeredAt) {

    public RegisteredContainer {
        declared = Set.copyOf(declared);
    }

    /** The facts that rest on this declaration. */
    public List<DeclarableFact> restingOn(UUID by) {
        return declared.stream().filter(fact -> by.equals(further.declared().getOrDefault(fact, declaration))).sorted()
                .toList();
    }

    public NewContainer content() {
        return new NewContainer(marks, particulars, tag, declaration, declared, further);
    }

    /** All that this module knows for an assessment; history, place, fills and holds are for others to add. */
    public FactsBuilder facts() {
        var manufactured = marks.manufactured();
        var capacity = marks.waterCapacity();
        var pressure = marks.servicePressure();
        return Facts.builder().kind(marks.kind()).specification(marks.specification().value())
                .manufactured(manufactured == null ? null : manufactured.value())
                .waterCapacity(capacity == null ? null : capacity.value())
                .servicePressure(pressure == null ? null : BigDecimal.valueOf(pressure.psig()))
                .coated(particulars.coated()).lined(particulars.lined()).steel(particulars.steel())
                .installation(particulars.installation()).reliefValve(particulars.reliefValve())
                .marksLegible(particulars.marksLegible())
                .ownerConsent(particulars.ownership().mayFill()).permit(particulars.permit()).use(particulars.use())
                .service(particulars.service()).extendedPeriod(particulars.extendedPeriod())
                .schemeDue(particulars.schemeDue()).outOfServiceSince(particulars.outOfServiceSince());
    }
}
