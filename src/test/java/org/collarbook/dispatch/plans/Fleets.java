package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.dispatch.plans.Cylinder.Standing;
import org.collarbook.dispatch.plans.PlanInput.DrivenRoute;
import org.collarbook.dispatch.plans.PlanInput.Rack;
import org.collarbook.dispatch.plans.PlanInput.ShopCapacity;

/** Fleets drawn at random: routes that share stops and vehicles, racks and shop of any tightness, none of it real. */
final class Fleets {

    static final LocalDate FROM = LocalDate.of(2026, 12, 14);

    private final Random random;
    private final int routes;
    private final int visits;
    private final int cylinders;
    private final int places;
    private final int perWeek;

    /** @param places the most of a size on a rack, {@code perWeek} of the shop in a week */
    Fleets(long seed, int routes, int visits, int cylinders, int places, int perWeek) {
        this.random = new Random(seed);
        this.routes = routes;
        this.visits = visits;
        this.cylinders = cylinders;
        this.places = places;
        this.perWeek = perWeek;
    }

    PlanInput draw() {
        var sites = ids(Math.max(2, cylinders / 8));
        var vehicles = ids(Math.max(1, routes * 2 / 3));
        var sizes = List.of("20 lb", "33.5 lb");
        var through = FROM.plusDays(7L * visits);
        var racks = new HashMap<Rack, Integer>();
        vehicles.forEach(vehicle -> sizes.forEach(size -> {
            if (random.nextInt(8) > 0) {
                racks.put(new Rack(vehicle, size), random.nextInt(places + 1));
            }
        }));
        var weeks = new TreeMap<>(Map.of(IsoWeek.of(FROM.plusDays(14)), random.nextInt(2)));
        return new PlanInput(FROM, through, cylinders(sites, sizes, through), routes(sites, vehicles, through), racks,
                new ShopCapacity(random.nextInt(perWeek + 1), weeks));
    }

    private List<UUID> ids(int count) {
        var ids = new ArrayList<UUID>();
        for (int i = 0; i < count; i++) {
            ids.add(new UUID(random.nextLong(), random.nextLong()));
        }
        return ids;
    }

    private List<DrivenRoute> routes(List<UUID> sites, List<UUID> vehicles, LocalDate through) {
        var drawn = new ArrayList<DrivenRoute>();
        for (var id : ids(routes)) {
            var days = new ArrayList<LocalDate>();
            int step = random.nextBoolean() ? 7 : 14;
            var day = FROM.plusDays(random.nextInt(step));
            for (; !day.isAfter(through); day = day.plusDays(step)) {
                days.add(day);
            }
            var stops = new HashSet<UUID>();
            sites.forEach(site -> {
                if (random.nextInt(routes) == 0 || random.nextInt(6) == 0) {
                    stops.add(site);
                }
            });
            drawn.add(new DrivenRoute(id, 0, random.nextInt(10) == 0 ? null : pick(vehicles), days,
                    random.nextInt(5) == 0 ? null : day, stops));
        }
        return drawn;
    }

    private List<Cylinder> cylinders(List<UUID> sites, List<String> sizes, LocalDate through) {
        int days = Math.toIntExact(through.toEpochDay() - FROM.toEpochDay()) + 20;
        var drawn = new ArrayList<Cylinder>();
        for (var id : ids(cylinders)) {
            var standing = switch (random.nextInt(12)) {
                case 0, 1 -> Standing.OUT_OF_SERVICE;
                case 2 -> random.nextBoolean() ? Standing.UNDETERMINED : Standing.OTHER_AUTHORITY;
                default -> Standing.DUE;
            };
            // some were due before, most are ahead
            var lastDay = standing == Standing.DUE ? FROM.plusDays(random.nextInt(days) - 8) : null;
            drawn.add(new Cylinder(id, "F" + drawn.size(), random.nextInt(20) == 0 ? null : pick(sites), pick(sizes),
                    standing, lastDay));
        }
        return drawn;
    }

    private <T> T pick(List<T> from) {
        return from.get(random.nextInt(from.size()));
    }
}
