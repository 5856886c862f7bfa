package org.collarbook.regulation;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Containers from a seed; {@code tidy} ones do not contradict themselves, the others may say anything that types allow. */
final class RandomFacts {

    private static final String[] STAMPS = {"DOT-4BA240", "DOT-4BW240", "DOT-4B150", "DOT-4E240", "DOT-4B240ET",
            "DOT-3AL1800",
            "DOT-3AA2015", "DOT-3B300", "DOT-3HT1850", "DOT-4L240", "DOT-39", "DOT-8", "TC-4BAM17", "DOT-SP12345", "UN",
            "UN ISO 9809-1", "ASME", "MC-331", "DOT-51", "CTC-4BA240", "DOT-4BA240/TC-4BAM17", "DOT-4AA480", "DOT-57"};
    private static final String[] PLACES = {"CA", "CA-BC", "US-TX", "ADR", "UK", "AU", "FR"};
    private static final String[] FUELS = {"LPG", "LPG", "LPG", "ANHYDROUS_AMMONIA", "METHYL_BROMIDE", "BUTADIENE"};
    private static final String[] OTHERS = {"CARBON_DIOXIDE", "NITROGEN", "AIR", "OXYGEN"};
    private static final String[] WORLD = {"EN 1442", "EN 1442 P15Y", "EN 14427", "EN 13110", "PI", "TC-4BAM17",
            "TC-4BWM16", "TC-3AAM165", "TC-SU12345", "TC-331", "DOT-4BA240", "DOT-4E240", "DOT-SP12345", "UN ISO 4706",
            "UN ISO 11119-3", "UN T50", "ASME", "DOT-51"};
    private static final List<Set<String>> ENABLED = List.of(Set.of(), Set.of("SECONDARY"), Set.of("MEMORY"),
            Set.of("SECONDARY", "MEMORY"));
    private final Random random;
    /** Of its own, so that the other facts stay those that a seed has always given. */
    private final Random fitted = new Random(4040);
    private final boolean tidy;
    private final @Nullable Jurisdiction place;

    RandomFacts(Random random, boolean tidy) {
        this(random, tidy, null);
    }

    /** All of one place, with what is stamped elsewhere than in the US among it. */
    RandomFacts(Random random, boolean tidy, @Nullable Jurisdiction place) {
        this.random = random;
        this.tidy = tidy;
        this.place = place;
    }

    Set<String> enabled() {
        return ENABLED.get(random.nextInt(ENABLED.size()));
    }

    LocalDate day() {
        return LocalDate.of(2018, 1, 1).plusDays(random.nextInt(365 * 20));
    }

    Facts next() {
        YearMonth made = YearMonth.of(1995, 1).plusMonths(random.nextInt(12 * 28));
        Use use = unless(Use.values()[random.nextInt(Use.values().length)]);
        String stamp = pick(place == null ? STAMPS : WORLD);
        FactsBuilder facts = Facts.builder()
                .jurisdiction(place != null
                        ? place
                        : random.nextInt(8) > 0 ? Jurisdiction.US : new Jurisdiction(pick(PLACES)));
        ContainerKind kind = kind(stamp);
        facts.kind(kind).specification(Specification.parse(stamp)).manufactured(made).use(use);
        facts.waterCapacity(unless(WaterCapacity.pounds(pick("11.9", "47.6", "238", "1000", "8328"))));
        facts.coated(flag()).lined(flag()).steel(unless(random.nextBoolean() ? Steel.NQT : Steel.QT));
        facts.marksLegible(flag()).ownerConsent(flag()).service(service(use)).requalifications(history(kind, made));
        facts.reliefValve(unless(random.nextBoolean() ? ReliefValve.INTERNAL : ReliefValve.EXTERNAL));
        facts.installation(unless(random.nextBoolean() ? Installation.ABOVEGROUND : Installation.UNDERGROUND));
        facts.move(unless(new Move(unless(new BigDecimal(random.nextInt(100))),
                unless(Purpose.values()[random.nextInt(Purpose.values().length)]))));
        facts.extendedPeriod(unless(ExtendedPeriod.values()[random.nextInt(ExtendedPeriod.values().length)]));
        facts.outOfServiceSince(random.nextInt(8) == 0 ? day() : null);
        facts.condition(condition()).holds(random.nextInt(4) > 0
                ? List.of()
                : random.nextBoolean()
                        ? null
                        : List.of(new StandingHold("LEAK", day())));
        facts.fittings(fitted.nextInt(3) == 0 ? fittings() : null);
        facts.permit(unless(new Permit("SP12345", LocalDate.of(2032, 1, 1), years(stamp))));
        facts.servicePressure(stamp.equals("ASME") ? new BigDecimal(250) : null);
        facts.filledOn(unless(day())).emptiedOn(random.nextInt(3) == 0 ? day() : null);
        facts.policies(random.nextInt(5) > 0 ? Set.of() : EnumSet.allOf(Policy.class));
        facts.enable(place != null
                ? enabled()
                : random.nextInt(5) > 0 ? Set.of() : Set.of("SECONDARY", "MEMORY"));
        return facts.build();
    }

    private Fittings fittings() {
        var label = Fittings.Label.values()[fitted.nextInt(Fittings.Label.values().length)];
        return new Fittings(fitted.nextInt(8) > 0 ? null : fitted.nextBoolean(),
                fitted.nextInt(3) == 0 ? null : fitted.nextBoolean(), fitted.nextBoolean() ? label : null,
                fitted.nextInt(4) > 0 ? null : LocalDate.of(2000 + fitted.nextInt(40), 1, 1));
    }

    /** What is made under a permit has the permit's period; beside a specification one gives a longer period. */
    private int years(String stamp) {
        return place == null || stamp.contains("SU") || stamp.contains("SP") ? 5 : 10;
    }

    private ContainerKind kind(String stamp) {
        if (!tidy && random.nextInt(4) == 0) {
            return ContainerKind.values()[random.nextInt(4)];
        }
        return switch (stamp) {
            case "ASME" -> ContainerKind.STATIONARY_TANK;
            case "MC-331", "TC-331" -> ContainerKind.CARGO_TANK;
            case "DOT-51", "DOT-57", "UN T50" -> ContainerKind.PORTABLE_TANK;
            default -> ContainerKind.CYLINDER;
        };
    }

    /** An extinguisher or a diver's cylinder does not hold fuel. */
    private Service service(@Nullable Use use) {
        boolean fuel = use == null || use == Use.FUEL || use == Use.INDUSTRIAL_TRUCK || use == Use.HOT_AIR_BALLOON
                || !tidy;
        return new Service(unless(new Lading(pick(fuel ? FUELS : OTHERS))), flag(), flag());
    }

    private @Nullable List<Requalification> history(ContainerKind kind, YearMonth made) {
        if (random.nextInt(8) == 0) {
            return null;
        }
        List<Requalification> history = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            int months = random.nextInt(12 * 35) - (tidy ? 0 : 24);
            Method method = tidy ? fitting(kind) : Method.values()[random.nextInt(Method.values().length)];
            Requalification.Result result = random.nextInt(12) > 0
                    ? Requalification.Result.PASSED
                    : Requalification.Result.values()[random.nextInt(3)];
            history.add(
                    new Requalification(made.plusMonths(months), unless(method), random.nextInt(6) == 0, false, random
                            .nextInt(5) > 0 ? Cases.RIN : null, false, result));
        }
        return history;
    }

    private Method fitting(ContainerKind kind) {
        if (random.nextInt(3) > 0 && kind == ContainerKind.CYLINDER) {
            return Method.values()[random.nextInt(3)];
        }
        List<Method> methods = switch (kind) {
            case CYLINDER -> List.copyOf(EnumSet.range(Method.VOLUMETRIC_EXPANSION, Method.SHELL_AND_FILLER));
            case CARGO_TANK -> List.of(Method.V, Method.I, Method.K, Method.P);
            case PORTABLE_TANK -> List.of(Method.PERIODIC, Method.INTERMEDIATE, Method.P);
            case STATIONARY_TANK, EXTINGUISHER -> List.of(Method.VALVE_REPLACED, Method.VALVE_INSPECTED,
                    Method.PROTECTION_TESTED);
        };
        return methods.get(random.nextInt(methods.size()));
    }

    private @Nullable Condition condition() {
        if (random.nextInt(8) == 0) {
            return null;
        }
        return random.nextInt(3) > 0
                ? Condition.SOUND
                : new Condition(random.nextBoolean() ? List.of() : List.of("DENT"),
                        new BigDecimal(random.nextInt(10)), flag(), flag(), random.nextInt(4) == 0 ? day() : null,
                        random.nextInt(
                                8) == 0 ? day() : null);
    }

    private @Nullable Boolean flag() {
        return random.nextInt(8) == 0 ? null : random.nextInt(4) > 0;
    }

    private <T> @Nullable T unless(T value) {
        return random.nextInt(8) == 0 ? null : value;
    }

    private String pick(String... choices) {
        return choices[random.nextInt(choices.length)];
    }
}
