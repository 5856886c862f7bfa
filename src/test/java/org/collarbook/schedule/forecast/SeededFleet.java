package org.collarbook.schedule.forecast;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;

import org.collarbook.regulation.Condition;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Rin;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StandingHold;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** Containers of all kinds, with and without what the rules ask for, in the US and Canada. */
final class SeededFleet {

    private static final Map<String, ContainerKind> KINDS = Map.of("ASME", ContainerKind.STATIONARY_TANK, "MC-331",
            ContainerKind.CARGO_TANK, "DOT-51", ContainerKind.PORTABLE_TANK);
    private static final List<Method> OF_CYLINDERS = List.of(Method.VOLUMETRIC_EXPANSION, Method.EXTERNAL_VISUAL,
            Method.PROOF_PRESSURE);
    private static final List<Method> OF_TANKS = List.of(Method.V, Method.K, Method.I, Method.P, Method.PERIODIC,
            Method.INTERMEDIATE);

    private final Random random;

    SeededFleet(long seed) {
        random = new Random(seed);
    }

    List<Facts> of(int containers) {
        var fleet = new ArrayList<Facts>();
        for (int i = 0; i < containers; i++) {
            fleet.add(next());
        }
        return fleet;
    }

    private Facts next() {
        var stamp = List.of("DOT-4BA240", "DOT-4BA240", "DOT-4BW240", "DOT-4E240", "DOT-4B240ET", "DOT-3AL1800",
                "DOT-3B300", "DOT-3HT1850", "DOT-4L240", "DOT-SP12345", "TC-4BAM17", "MC-331", "DOT-51", "ASME")
                .get(random.nextInt(14));
        var kind = KINDS.getOrDefault(stamp, ContainerKind.CYLINDER);
        var made = YearMonth.of(1998, 1).plusMonths(random.nextInt(12 * 28));
        return Facts.builder().jurisdiction(random.nextInt(6) == 0 ? new Jurisdiction("CA") : Jurisdiction.US)
                .kind(kind).specification(Specification.parse(stamp)).manufactured(made)
                .waterCapacity(kind == ContainerKind.CYLINDER
                        ? WaterCapacity.pounds(random.nextInt(4) == 0 ? "11.9" : "47.6")
                        : WaterCapacity.gallons("3000"))
                .coated(mostly()).marksLegible(true).ownerConsent(true)
                .service(new Service(Service.LPG.lading(), mostly(), true)).condition(Condition.SOUND)
                .holds(random.nextInt(12) > 0
                        ? List.of()
                        : List.of(new StandingHold("DENTED", day())))
                .permit(new Permit("SP12345", day(), 5)).requalifications(history(kind, made)).build();
    }

    /** Unknown, or no, now and then. */
    private @Nullable Boolean mostly() {
        int chance = random.nextInt(12);
        return chance == 0 ? null : Boolean.valueOf(chance > 1);
    }

    /** Up to twenty years ahead; of those some dated so by mistake. */
    private LocalDate day() {
        return LocalDate.of(2026, 1, 1).plusDays(random.nextInt(7300));
    }

    private @Nullable List<Requalification> history(ContainerKind kind, YearMonth made) {
        if (random.nextInt(12) == 0) {
            return null;
        }
        var methods = kind == ContainerKind.CYLINDER ? OF_CYLINDERS : OF_TANKS;
        var history = new ArrayList<Requalification>();
        for (int tests = random.nextInt(kind == ContainerKind.CYLINDER ? 3 : 8); tests > 0; tests--) {
            var month = YearMonth.of(2026, 11).minusMonths(random.nextInt(150));
            var method = random.nextInt(25) == 0 ? null : methods.get(random.nextInt(methods.size()));
            history.add(Requalification.passed(month.isAfter(made) ? month : made.plusMonths(1), method,
                    new Rin("A123")));
        }
        return history;
    }
}
