package org.collarbook.regulation;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

/** Containers about which everything is known and in order, to be spoiled one fact at a time. */
public final class Cases {

    public static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    public static final Rin RIN = new Rin("B045");

    private Cases() {}

    /** A 20 lb cylinder of May 2004, coated, in exclusive LP-gas service, looked at and with no hold. */
    public static FactsBuilder cylinder() {
        return Facts.builder().jurisdiction(Jurisdiction.US).kind(ContainerKind.CYLINDER)
                .specification(Specification.parse(
                        "DOT-4BA240"))
                .manufactured(YearMonth.of(2004, 5)).waterCapacity(WaterCapacity.pounds("47.6")).coated(true)
                .marksLegible(true).ownerConsent(true).use(Use.FUEL).service(Service.LPG).condition(Condition.SOUND)
                .holds(
                        List.of())
                .requalifications(List.of());
    }

    public static FactsBuilder stationary() {
        return cylinder().kind(ContainerKind.STATIONARY_TANK).specification(Specification.ASME)
                .waterCapacity(WaterCapacity
                        .gallons("500"))
                .servicePressure(new BigDecimal(250));
    }

    public static FactsBuilder bobtail(YearMonth tested) {
        return cylinder().kind(ContainerKind.CARGO_TANK).specification(Specification.parse("MC-331")).waterCapacity(
                WaterCapacity.gallons("3499")).steel(Steel.NQT).servicePressure(new BigDecimal(250))
                .requalifications(List.of(
                        mark(tested, Method.V), mark(tested, Method.K), mark(tested, Method.I),
                        mark(tested, Method.P)));
    }

    public static Requalification mark(YearMonth month, Method method) {
        return Requalification.passed(month, method, RIN);
    }

    public static Requalification mark(String month, Method method) {
        return mark(YearMonth.parse(month), method);
    }
}
