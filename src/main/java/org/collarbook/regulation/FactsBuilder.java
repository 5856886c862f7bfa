package org.collarbook.regulation;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Gathers facts one by one; what is not set stays unknown. */
public final class FactsBuilder {

    private @Nullable Jurisdiction jurisdiction;
    private @Nullable ContainerKind kind;
    private @Nullable Specification specification;
    private @Nullable YearMonth manufactured;
    private @Nullable WaterCapacity waterCapacity;
    private @Nullable BigDecimal servicePressure;
    private @Nullable Boolean coated;
    private @Nullable Boolean lined;
    private @Nullable Steel steel;
    private @Nullable Installation installation;
    private @Nullable Boolean marksLegible;
    private @Nullable Boolean ownerConsent;
    private @Nullable Permit permit;
    private @Nullable Use use;
    private Service service = Service.UNKNOWN;
    private @Nullable ReliefValve reliefValve;
    private @Nullable ExtendedPeriod extendedPeriod;
    private @Nullable Extinguisher extinguisher;
    private @Nullable YearMonth schemeDue;
    private @Nullable LocalDate outOfServiceSince;
    private @Nullable Fittings fittings;
    private @Nullable Move move;
    private @Nullable Condition condition;
    private @Nullable List<StandingHold> holds;
    private @Nullable List<Requalification> requalifications;
    private @Nullable LocalDate filledOn;
    private @Nullable LocalDate emptiedOn;
    private Set<Policy> policies = Set.of();
    private Set<String> enable = Set.of();

    FactsBuilder() {}

    FactsBuilder(Facts facts) {
        jurisdiction = facts.jurisdiction();
        kind = facts.kind();
        specification = facts.specification();
        manufactured = facts.manufactured();
        waterCapacity = facts.waterCapacity();
        servicePressure = facts.servicePressure();
        coated = facts.coated();
        lined = facts.lined();
        steel = facts.steel();
        installation = facts.installation();
        marksLegible = facts.marksLegible();
        ownerConsent = facts.ownerConsent();
        permit = facts.permit();
        use = facts.use();
        service = facts.service();
        reliefValve = facts.reliefValve();
        extendedPeriod = facts.extendedPeriod();
        extinguisher = facts.extinguisher();
        schemeDue = facts.schemeDue();
        outOfServiceSince = facts.outOfServiceSince();
        fittings = facts.fittings();
        move = facts.move();
        condition = facts.condition();
        holds = facts.holds();
        requalifications = facts.requalifications();
        filledOn = facts.filledOn();
        emptiedOn = facts.emptiedOn();
        policies = facts.policies();
        enable = facts.enable();
    }

    public FactsBuilder jurisdiction(@Nullable Jurisdiction value) {
        jurisdiction = value;
        return this;
    }

    public FactsBuilder kind(@Nullable ContainerKind value) {
        kind = value;
        return this;
    }

    public FactsBuilder specification(@Nullable Specification value) {
        specification = value;
        return this;
    }

    public FactsBuilder manufactured(@Nullable YearMonth value) {
        manufactured = value;
        return this;
    }

    public FactsBuilder waterCapacity(@Nullable WaterCapacity value) {
        waterCapacity = value;
        return this;
    }

    public FactsBuilder servicePressure(@Nullable BigDecimal value) {
        servicePressure = value;
        return this;
    }

    public FactsBuilder coated(@Nullable Boolean value) {
        coated = value;
        return this;
    }

    public FactsBuilder lined(@Nullable Boolean value) {
        lined = value;
        return this;
    }

    public FactsBuilder steel(@Nullable Steel value) {
        steel = value;
        return this;
    }

    public FactsBuilder installation(@Nullable Installation value) {
        installation = value;
        return this;
    }

    public FactsBuilder marksLegible(@Nullable Boolean value) {
        marksLegible = value;
        return this;
    }

    public FactsBuilder ownerConsent(@Nullable Boolean value) {
        ownerConsent = value;
        return this;
    }

    public FactsBuilder permit(@Nullable Permit value) {
        permit = value;
        return this;
    }

    public FactsBuilder use(@Nullable Use value) {
        use = value;
        return this;
    }

    public FactsBuilder service(Service value) {
        service = value;
        return this;
    }

    public FactsBuilder reliefValve(@Nullable ReliefValve value) {
        reliefValve = value;
        return this;
    }

    public FactsBuilder extendedPeriod(@Nullable ExtendedPeriod value) {
        extendedPeriod = value;
        return this;
    }

    public FactsBuilder extinguisher(@Nullable Extinguisher value) {
        extinguisher = value;
        return this;
    }

    public FactsBuilder schemeDue(@Nullable YearMonth value) {
        schemeDue = value;
        return this;
    }

    public FactsBuilder outOfServiceSince(@Nullable LocalDate value) {
        outOfServiceSince = value;
        return this;
    }

    public FactsBuilder fittings(@Nullable Fittings value) {
        fittings = value;
        return this;
    }

    public FactsBuilder move(@Nullable Move value) {
        move = value;
        return this;
    }

    public FactsBuilder condition(@Nullable Condition value) {
        condition = value;
        return this;
    }

    public FactsBuilder holds(@Nullable List<StandingHold> value) {
        holds = value;
        return this;
    }

    public FactsBuilder requalifications(@Nullable List<Requalification> value) {
        requalifications = value;
        return this;
    }

    public FactsBuilder filledOn(@Nullable LocalDate value) {
        filledOn = value;
        return this;
    }

    public FactsBuilder emptiedOn(@Nullable LocalDate value) {
        emptiedOn = value;
        return this;
    }

    public FactsBuilder policies(Set<Policy> value) {
        policies = value;
        return this;
    }

    public FactsBuilder enable(Set<String> value) {
        enable = value;
        return this;
    }

    public Facts build() {
        return new Facts(jurisdiction, kind, specification, manufactured, waterCapacity, servicePressure, coated, lined,
                steel, installation, marksLegible, ownerConsent, permit, use, service, reliefValve, extendedPeriod,
                extinguisher, schemeDue, outOfServiceSince, fittings, move, condition, holds, requalifications,
                filledOn,
                emptiedOn, policies, enable);
    }
}
