package org.collarbook.dispatch.plans;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.dispatch.plans.Cylinder.Standing;
import org.collarbook.dispatch.plans.PlanInput.DrivenRoute;
import org.collarbook.dispatch.plans.PlanInput.Rack;
import org.collarbook.dispatch.plans.PlanInput.ShopCapacity;
import org.collarbook.dispatch.plans.PlanLine.Why;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Plans small enough to be worked out by hand. */
class PlanTests {

    private static final LocalDate FROM = LocalDate.of(2026, 12, 1);
    private static final LocalDate THROUGH = LocalDate.of(2027, 2, 28);
    private static final UUID SITE = new UUID(1, 1);
    private static final UUID OTHER_SITE = new UUID(1, 2);
    private static final UUID VEHICLE = new UUID(2, 1);
    private static final String SIZE = "20 lb";
    private static final Map<Rack, Integer> ROOM = Map.of(new Rack(VEHICLE, SIZE), 100);

    private static int serial;

    private static Cylinder due(UUID site, String lastDay) {
        return new Cylinder(new UUID(3, ++serial), "P" + serial, site, SIZE, Standing.DUE, LocalDate.parse(lastDay));
    }

    private static Cylinder held(UUID site) {
        return new Cylinder(new UUID(3, ++serial), "P" + serial, site, SIZE, Standing.OUT_OF_SERVICE, null);
    }

    private static DrivenRoute route(int id, UUID site, String... days) {
        return new DrivenRoute(new UUID(4, id), 0, VEHICLE, List.of(days).stream().map(LocalDate::parse).toList(),
                LocalDate.of(2027, 3, 3), Set.of(site));
    }

    private static Plan plan(List<Cylinder> cylinders, List<DrivenRoute> routes, Map<Rack, Integer> racks, int perWeek,
            Map<String, Integer> weeks) {
        var shop = new TreeMap<IsoWeek, Integer>();
        weeks.forEach((week, capacity) -> shop.put(IsoWeek.tryParse(week).orElseThrow(), capacity));
        return Plan.of(new PlanInput(FROM, THROUGH, cylinders, routes, racks, new ShopCapacity(perWeek, shop)));
    }

    private static List<String> days(Plan plan) {
        return plan.lines().stream().map(line -> line.visit().day().toString()).toList();
    }

    private static @Nullable WhyNot left(Plan plan, Cylinder one) {
        return plan.remainder().stream().filter(left -> left.cylinder().equals(one)).map(Chains.LeftOver::reason)
                .findAny().orElse(null);
    }

    @Test
    void spreadsWhatTheShopCannotTakeAtOnceOverTheWeeksBefore() {
        var cylinders = List.of(due(SITE, "2026-12-31"), due(SITE, "2026-12-31"), due(SITE, "2026-12-31"));
        var plan = plan(cylinders, List.of(route(1, SITE, "2026-12-16", "2026-12-23", "2026-12-30")), ROOM, 1,
                Map.of());
        assertThat(days(plan)).containsExactly("2026-12-16", "2026-12-23", "2026-12-30");
        assertThat(plan.lines().stream().mapToLong(PlanLine::wastedDays).sum()).isEqualTo(15 + 8 + 1);
        assertThat(Load.of(plan.naive()).peak()).isEqualTo(3);
        assertThat(plan.gap()).isZero();
        assertThat(plan.extra()).isEqualTo(ExtraCapacity.NONE);
    }

    /** By ISO 8601 2026 has 53 weeks, and 2027-01-01, a Friday, belongs to the last of them. */
    @Test
    void aWeekReachesOverTheEndOfTheYear() {
        var cylinders = List.of(due(SITE, "2026-12-31"), due(SITE, "2027-01-31"));
        var routes = List.of(route(1, SITE, "2026-12-23", "2026-12-31", "2027-01-01"));
        assertThat(days(plan(cylinders, routes, ROOM, 1, Map.of()))).containsExactly("2026-12-23", "2027-01-01");
        assertThat(days(plan(cylinders, routes, ROOM, 1, Map.of("2026-W53", 2))))
                .containsExactly("2026-12-31", "2027-01-01");
    }

    @Test
    void aWeekInWhichTheShopIsClosedTakesNothing() {
        var plan = plan(List.of(due(SITE, "2026-12-31")), List.of(route(1, SITE, "2026-12-16", "2026-12-30")), ROOM, 5,
                Map.of("2026-W53", 0));
        assertThat(days(plan)).containsExactly("2026-12-16");
    }

    @Test
    void aShopThatTakesNothingLeavesAllOver() {
        var one = due(SITE, "2026-12-31");
        var plan = plan(List.of(one), List.of(route(1, SITE, "2026-12-16", "2026-12-30")), ROOM, 0, Map.of());
        assertThat(plan.lines()).isEmpty();
        assertThat(left(plan, one)).isEqualTo(WhyNot.SHOP_FULL);
        assertThat(plan.extra().shop()).isEqualTo(Map.of(new IsoWeek(2026, 53), 1));
        assertThat(plan.extra().racks()).isEmpty();
    }

    @Test
    void aRackWithoutPlacesIsNoRackThatIsNotKnown() {
        var one = due(SITE, "2026-12-31");
        var routes = List.of(route(1, SITE, "2026-12-30"));
        var full = plan(List.of(one), routes, Map.of(new Rack(VEHICLE, SIZE), 0), 5, Map.of());
        assertThat(left(full, one)).isEqualTo(WhyNot.RACK_FULL);
        assertThat(full.extra().racks())
                .isEqualTo(Map.of(new RackDay(LocalDate.of(2026, 12, 30), VEHICLE, SIZE), 1));
        assertThat(left(plan(List.of(one), routes, Map.of(), 5, Map.of()), one)).isEqualTo(WhyNot.RACK_NOT_KNOWN);
        var neither = plan(List.of(one), routes, Map.of(new Rack(VEHICLE, SIZE), 0), 0, Map.of());
        assertThat(left(neither, one)).isEqualTo(WhyNot.SHOP_AND_RACK_FULL);
        assertThat(neither.extra().total()).isEqualTo(2);
    }

    @Test
    void twoRoutesOfOneVehicleOnOneDayShareItsRack() {
        var cylinders = List.of(due(SITE, "2026-12-31"), due(OTHER_SITE, "2026-12-31"));
        var routes = List.of(route(1, SITE, "2026-12-16", "2026-12-30"),
                route(2, OTHER_SITE, "2026-12-23", "2026-12-30"));
        var plan = plan(cylinders, routes, Map.of(new Rack(VEHICLE, SIZE), 1), 5, Map.of());
        assertThat(days(plan)).containsExactly("2026-12-23", "2026-12-30");
        assertThat(plan.naive().stream().map(line -> line.visit().day()).distinct()).hasSize(1);
    }

    @Test
    void whatIsOutOfServiceTakesThePlacesFirstAndNotTheShop() {
        var held = held(SITE);
        var due = due(SITE, "2026-12-20");
        var routes = List.of(route(1, SITE, "2026-12-16", "2026-12-30"));
        var plan = plan(List.of(due, held), routes, Map.of(new Rack(VEHICLE, SIZE), 1), 0, Map.of());
        assertThat(plan.lines()).singleElement().satisfies(line -> {
            assertThat(line.cylinder()).isEqualTo(held);
            assertThat(line.visit().day()).isEqualTo("2026-12-16");
            assertThat(line.why()).isEqualTo(Why.OUT_OF_SERVICE);
        });
        assertThat(plan.load().peak()).isZero();
        assertThat(left(plan, due)).isEqualTo(WhyNot.SHOP_AND_RACK_FULL);
    }

    /** Three are late and the shop takes one a week: they come one after another, before what is not late. */
    @Test
    void whatIsLateComesAsSoonAsItCan() {
        var cylinders = new ArrayList<>(
                List.of(due(SITE, "2026-10-31"), due(SITE, "2026-11-30"), due(SITE, "2026-12-05")));
        cylinders.add(due(SITE, "2027-02-28"));
        var plan = plan(cylinders, List.of(route(1, SITE, "2026-12-09", "2026-12-16", "2026-12-23", "2027-01-06",
                "2027-02-24")), ROOM, 1, Map.of());
        assertThat(days(plan)).containsExactly("2026-12-09", "2026-12-16", "2026-12-23", "2027-02-24");
        assertThat(plan.lines()).extracting(PlanLine::why).containsExactly(Why.OVERDUE, Why.OVERDUE,
                Why.DUE_BEFORE_FIRST_VISIT, Why.DUE);
    }

    @Test
    void ofALateOneAndAnotherTheLateOneIsPulled() {
        var late = due(SITE, "2026-11-30");
        var other = due(SITE, "2026-12-31");
        var plan = plan(List.of(other, late), List.of(route(1, SITE, "2026-12-16")), ROOM, 1, Map.of());
        assertThat(plan.lines()).extracting(PlanLine::cylinder).containsExactly(late);
        assertThat(left(plan, other)).isEqualTo(WhyNot.SHOP_FULL);
    }

    /** The visit after the plan is on 2027-03-03: what is due on the 2nd must come before. */
    @Test
    void whatAVisitAfterThePlanPullsInTimeIsNotNeededYet() {
        var sooner = due(SITE, "2027-03-02");
        var plan = plan(List.of(sooner, due(SITE, "2027-03-03")), List.of(route(1, SITE, "2026-12-16", "2027-02-24")),
                ROOM, 5, Map.of());
        assertThat(plan.lines()).singleElement().satisfies(line -> {
            assertThat(line.cylinder()).isEqualTo(sooner);
            assertThat(line.visit().day()).isEqualTo("2027-02-24");
        });
        assertThat(plan.notNeeded()).isEqualTo(1);
        assertThat(plan.remainder()).isEmpty();
    }

    @Test
    void whatNobodyCanPlanIsLeftOverWithTheReason() {
        var nowhere = new Cylinder(new UUID(3, 900), "N", null, SIZE, Standing.DUE, LocalDate.of(2026, 12, 31));
        var off = due(OTHER_SITE, "2026-12-31");
        var unknown = new Cylinder(new UUID(3, 901), "U", SITE, SIZE, Standing.UNDETERMINED, null);
        var foreign = new Cylinder(new UUID(3, 902), "O", SITE, SIZE, Standing.OTHER_AUTHORITY, null);
        var plan = plan(List.of(nowhere, off, unknown, foreign), List.of(route(1, SITE, "2026-12-16")), ROOM, 5,
                Map.of());
        assertThat(left(plan, nowhere)).isEqualTo(WhyNot.PLACE_NOT_KNOWN);
        assertThat(left(plan, off)).isEqualTo(WhyNot.NO_ROUTE);
        assertThat(left(plan, unknown)).isEqualTo(WhyNot.UNDETERMINED);
        assertThat(left(plan, foreign)).isEqualTo(WhyNot.OTHER_AUTHORITY);
        var one = due(SITE, "2026-12-31");
        assertThat(left(plan(List.of(one), List.of(route(1, SITE)), ROOM, 5, Map.of()), one))
                .isEqualTo(WhyNot.NO_VISIT_IN_HORIZON);
        var without = new DrivenRoute(new UUID(4, 1), 0, null, List.of(LocalDate.of(2026, 12, 16)), null, Set.of(SITE));
        assertThat(left(plan(List.of(one), List.of(without), ROOM, 5, Map.of()), one)).isEqualTo(WhyNot.NO_VEHICLE);
    }

    /** Stop by stop: of two sites that are due alike, one is done at one visit. */
    @Test
    void doesAStopAtOneVisitWhereItMakesNoDifference() {
        var cylinders = List.of(due(OTHER_SITE, "2026-12-31"), due(SITE, "2026-12-31"), due(OTHER_SITE, "2026-12-31"),
                due(SITE, "2026-12-31"));
        var both = new DrivenRoute(new UUID(4, 1), 0, VEHICLE,
                List.of(LocalDate.of(2026, 12, 23), LocalDate.of(2026, 12, 30)), null, Set.of(SITE, OTHER_SITE));
        var plan = plan(cylinders, List.of(both), ROOM, 2, Map.of());
        assertThat(plan.lines()).extracting(line -> line.cylinder().site()).containsExactly(SITE, SITE, OTHER_SITE,
                OTHER_SITE);
    }

    /** A flow that goes a dearer way is not proved: the bound falls short of its cost by what it wastes. */
    @Test
    void theProofSeesAFlowThatIsNotTheCheapest() {
        var network = new Network();
        int from = network.node();
        int to = network.node();
        network.supply(from, 3);
        network.supply(to, -3);
        network.arc(from, to, 3, 5);
        network.arc(from, to, 2, 1);
        assertThat(CheapestFlow.through(network)).satisfies(flow -> {
            assertThat(flow.flows()).containsExactly(1, 2);
            assertThat(flow.gap(network)).isZero();
        });
        assertThat(new CheapestFlow(new long[]{3, 0}, 15).gap(network)).isPositive();
    }
}
