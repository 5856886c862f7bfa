package org.collarbook.regulation;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What is known of one container; null is unknown, never a default. Missing is not empty: {@code requalifications} null
 * is an unknown history, an empty list is a collar that was read and bears no later mark; so with {@code holds}.
 * {@code servicePressure} is in psig and goes before the one in the specification; {@code schemeDue} is the month that a
 * written scheme of examination gives. {@code enable} holds rule ids and names of {@link Basis}.
 */
public record Facts(@Nullable Jurisdiction jurisdiction, @Nullable ContainerKind kind,
        @Nullable Specification specification, @Nullable YearMonth manufactured, @Nullable WaterCapacity waterCapacity,
        @Nullable BigDecimal servicePressure, @Nullable Boolean coated, @Nullable Boolean lined, @Nullable Steel steel,
        @Nullable Installation installation, @Nullable Boolean marksLegible, @Nullable Boolean ownerConsent,
        @Nullable Permit permit, @Nullable Use use, Service service, @Nullable ReliefValve reliefValve,
        @Nullable ExtendedPeriod extendedPeriod, @Nullable Extinguisher extinguisher, @Nullable YearMonth schemeDue,
        @Nullable LocalDate outOfServiceSince, @Nullable Fittings fittings, @Nullable Move move,
        @Nullable Condition condition,
        @Nullable List<StandingHold> holds, @Nullable List<Requalification> requalifications,
        @Nullable LocalDate filledOn, @Nullable LocalDate emptiedOn, Set<Policy> policies, Set<String> enable) {

    public static final Facts UNKNOWN = new FactsBuilder().build();

    public Facts {
        holds = holds == null ? null : List.copyOf(holds);
        requalifications = requalifications == null ? null : List.copyOf(requalifications);
        policies = Set.copyOf(policies);
        enable = Set.copyOf(enable);
    }

    public static FactsBuilder builder() {
        return new FactsBuilder();
    }

    public FactsBuilder toBuilder() {
        return new FactsBuilder(this);
    }
}
