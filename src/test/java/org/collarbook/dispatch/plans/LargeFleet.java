package org.collarbook.dispatch.plans;

import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.UUID;

import org.collarbook.platform.BulkCopy;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;

/**
 * A fleet for the figures, drawn at random into the tables themselves: 300 routes, a third weekly, the others fortnightly,
 * of 120 vehicles; 40 stops each, some on two routes; four sizes; months that more fall due in than in others; one in a
 * hundred out of service and one overdue.
 */
final class LargeFleet {

    private static final int ROUTES = 300;
    private static final int VEHICLES = 120;
    private static final int STOPS = 40;
    private static final List<String> SIZES = List.of("20 lb", "33.5 lb", "43.5 lb", "100 lb");
    private static final List<String> DAYS = List.of("MO", "TU", "WE", "TH", "FR");
    private static final OffsetDateTime THEN = TestClock.TODAY.minusYears(1).atStartOfDay().atOffset(ZoneOffset.UTC);

    private final Random random;
    private final int cylinders;
    private final UUID customer;
    private final UUID depot;
    private final List<UUID> vehicles;
    private final List<UUID> sites;
    private final List<UUID> routes;

    LargeFleet(long seed, int cylinders) {
        this.random = new Random(seed);
        this.cylinders = cylinders;
        this.customer = id();
        this.depot = id();
        this.vehicles = ids(VEHICLES);
        this.sites = ids(ROUTES * STOPS);
        this.routes = ids(ROUTES);
    }

    private UUID id() {
        return new UUID(random.nextLong(), random.nextLong());
    }

    private List<UUID> ids(int count) {
        var ids = new ArrayList<UUID>();
        for (int i = 0; i < count; i++) {
            ids.add(id());
        }
        return ids;
    }

    void into(BulkCopy copy) {
        places(copy);
        copy.into("route (id, code, name, depot_id, vehicle_id, rule, first_day, on_holidays)", routes,
                route -> new Object[]{route, "B-" + route, "a loop", depot, vehicles.get(random.nextInt(VEHICLES)),
                        "FREQ=WEEKLY;INTERVAL=" + (random.nextInt(3) == 0 ? 1 : 2) + ";BYDAY="
                                + DAYS.get(random.nextInt(DAYS.size())),
                        TestClock.TODAY.minusDays(random.nextInt(14)), true});
        copy.into("route_stop (route_id, position, site_id)", stops(), stop -> stop);
        var racks = new ArrayList<Object[]>();
        vehicles.forEach(vehicle -> SIZES
                .forEach(size -> racks.add(new Object[]{vehicle, size, 10 + random.nextInt(30)})));
        copy.into("rack (vehicle_id, size, places)", racks, rack -> rack);
        containers(copy);
    }

    private void places(BulkCopy copy) {
        copy.into("customer (id, code, name)", List.of(customer), one -> new Object[]{one, "B-" + one, "a customer"});
        var all = new ArrayList<@Nullable Object[]>();
        all.add(site(depot, "DEPOT", null));
        vehicles.forEach(vehicle -> all.add(site(vehicle, "VEHICLE", null)));
        sites.forEach(site -> all.add(site(site, "CUSTOMER", customer)));
        copy.into("site (id, code, name, kind, customer_id, zone, jurisdiction)", all, site -> site);
    }

    private static @Nullable Object[] site(UUID id, String kind, @Nullable UUID customer) {
        return new @Nullable Object[]{id, "B-" + id, "a place", kind, customer, "America/Chicago", "US"};
    }

    private List<Object[]> stops() {
        var stops = new ArrayList<Object[]>();
        for (int route = 0; route < ROUTES; route++) {
            for (int stop = 0; stop < STOPS; stop++) {
                stops.add(new Object[]{routes.get(route), stop + 1, sites.get(route * STOPS + stop)});
            }
            for (int more = 0; more < 3; more++) {
                int other = (route + 1 + random.nextInt(ROUTES - 1)) % ROUTES;
                stops.add(new Object[]{routes.get(route), STOPS + 1 + more,
                        sites.get(other * STOPS + more * 10 + random.nextInt(10))});
            }
        }
        return stops;
    }

    private void containers(BulkCopy copy) {
        var ids = ids(cylinders);
        int[] number = {0};
        copy.into("container (id, kind, mark_scheme, specification, serial, size, registered_by)", ids,
                id -> new Object[]{id, "CYLINDER", "DOT", "DOT-4BA240", "B" + number[0]++,
                        SIZES.get(random.nextInt(SIZES.size())), customer});
        var placed = new ArrayList<Object[]>();
        var due = new ArrayList<@Nullable Object[]>();
        for (var id : ids) {
            var site = sites.get(random.nextInt(sites.size()));
            placed.add(new Object[]{id, site, id(), THEN});
            int chance = random.nextInt(100);
            due.add(new @Nullable Object[]{id, "SHELL", true, chance == 0 ? "ON_HOLD" : "DUE",
                    chance == 1 ? TestClock.TODAY.withDayOfMonth(1).minusMonths(3) : month(), false, "{}", site,
                    customer, 1, LocalDate.of(2026, 11, 1), ""});
        }
        copy.into("placement (container_id, site_id, movement_id, since)", placed, row -> row);
        copy.into("requirement (container_id, requirement, decisive, standing, due, filled_in_time, reasons, site_id,"
                + " customer_id, rule_book_id, assessed_on, jurisdiction)", due, row -> row);
    }

    /** Cylinders are bought in lots, so half of them fall due around a few months. */
    private LocalDate month() {
        double share = random.nextBoolean() ? random.nextDouble() : Math.abs(Math.sin(random.nextDouble() * 6));
        return YearMonth.from(TestClock.TODAY).plusMonths((long) (18 * share)).atDay(1);
    }
}
