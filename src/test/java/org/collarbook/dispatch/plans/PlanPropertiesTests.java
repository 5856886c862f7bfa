package org.collarbook.dispatch.plans;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.LongStream;

import org.collarbook.dispatch.plans.Cylinder.Standing;
import org.collarbook.dispatch.plans.PlanInput.Rack;
import org.collarbook.dispatch.plans.PlanInput.ShopCapacity;
import org.collarbook.dispatch.plans.PlanLine.Why;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every plan, over fleets drawn at random; the seed names the fleet. */
class PlanPropertiesTests {

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 12);
    }

    private static PlanInput fleet(long seed) {
        return new Fleets(seed, 8, 16, 400, 6, 24).draw();
    }

    private static PlanInput withoutThoseOutOfService(PlanInput input) {
        return with(input, input.cylinders().stream()
                .filter(one -> one.standing() != Standing.OUT_OF_SERVICE).toList(), input.racks(), input.shop());
    }

    private static PlanInput with(PlanInput input, List<Cylinder> cylinders, Map<Rack, Integer> racks,
            ShopCapacity shop) {
        return new PlanInput(input.from(), input.through(), cylinders, input.routes(), racks, shop);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void keepsShopAndRacksAndNobodyIsPulledAfterItsLastDay(long seed) {
        var input = fleet(seed);
        var lines = Plan.of(input).lines();
        var shop = new HashMap<IsoWeek, Integer>();
        var racks = new HashMap<RackDay, Integer>();
        for (var line : lines) {
            racks.merge(line.rack(), 1, Integer::sum);
            if (line.cylinder().standing() == Standing.DUE) {
                shop.merge(IsoWeek.of(line.visit().day()), 1, Integer::sum);
            }
            if (line.why() == Why.DUE) {
                assertThat(line.visit().day()).isBeforeOrEqualTo(line.cylinder().lastDay());
            }
            assertThat(input.routes()).anyMatch(route -> route.id().equals(line.visit().route())
                    && line.visit().vehicle().equals(route.vehicle())
                    && route.visits().contains(line.visit().day())
                    && route.stops().contains(line.cylinder().site()));
        }
        shop.forEach((week, load) -> assertThat(load).as(week.toString()).isLessThanOrEqualTo(input.shop().in(week)));
        racks.forEach((rack, load) -> assertThat(load).as(rack.toString())
                .isLessThanOrEqualTo(input.racks().get(new Rack(rack.vehicle(), rack.size()))));
        assertThat(lines).isNotEmpty();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void accountsForEveryCylinderOnce(long seed) {
        var input = fleet(seed);
        var plan = Plan.of(input);
        var told = new HashSet<Cylinder>();
        plan.lines().forEach(line -> assertThat(told.add(line.cylinder())).isTrue());
        plan.remainder().forEach(left -> assertThat(told.add(left.cylinder())).isTrue());
        assertThat(told.size() + plan.notNeeded()).isEqualTo(input.cylinders().size());
        assertThat(plan.gap()).isZero();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void theSameInputInAnyOrderGivesTheSamePlan(long seed) {
        var input = fleet(seed);
        var random = new Random(seed);
        var cylinders = new ArrayList<>(input.cylinders());
        var routes = new ArrayList<>(input.routes());
        Collections.shuffle(cylinders, random);
        Collections.shuffle(routes, random);
        var shuffled = new PlanInput(input.from(), input.through(), cylinders, routes, new TreeMap<>(input.racks()),
                input.shop());
        assertThat(Hashes.of(shuffled)).isEqualTo(Hashes.of(input));
        var plan = Plan.of(input);
        var again = Plan.of(shuffled);
        assertThat(again.lines()).isEqualTo(plan.lines());
        assertThat(Hashes.of(again.lines(), again.remainder())).isEqualTo(Hashes.of(plan.lines(), plan.remainder()));
    }

    /** How many are left over for want of capacity, and how many late ones of those. */
    private static List<Long> worth(Plan plan) {
        var capacity = List.of(WhyNot.SHOP_FULL, WhyNot.RACK_FULL, WhyNot.SHOP_AND_RACK_FULL);
        var left = plan.remainder().stream().filter(one -> capacity.contains(one.reason())).toList();
        long late = left.stream().filter(one -> one.firstVisit() != null && one.cylinder().lastDay() != null
                && one.cylinder().lastDay().isBefore(one.firstVisit())).count();
        return List.of((long) left.size(), late);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void moreCapacityNeverLeavesMoreOver(long seed) {
        var input = withoutThoseOutOfService(fleet(seed));
        var more = new HashMap<>(input.racks());
        more.replaceAll((rack, places) -> places + 1);
        var shop = new ShopCapacity(input.shop().perWeek() + 2, input.shop().weeks());
        var worth = worth(Plan.of(input));
        for (var larger : List.of(with(input, input.cylinders(), more, input.shop()),
                with(input, input.cylinders(), input.racks(), shop),
                with(input, input.cylinders(), more, shop))) {
            var less = worth(Plan.of(larger));
            assertThat(less.getFirst()).isLessThanOrEqualTo(worth.getFirst());
            if (less.getFirst().equals(worth.getFirst())) {
                assertThat(less.getLast()).isLessThanOrEqualTo(worth.getLast());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void withWhatIsMissingNobodyIsLeftOverAndWithOneLessSomebodyIs(long seed) {
        var input = withoutThoseOutOfService(new Fleets(seed, 5, 8, 120, 4, 6).draw());
        var extra = Plan.of(input).extra();
        // the fleets are chosen so tight that this says something of each
        assertThat(extra.total()).isPositive();
        assertThat(left(input, extra.shop(), extra.racks())).isZero();
        extra.shop().keySet().stream().limit(3).forEach(week -> assertThat(
                left(input, less(extra.shop(), week), extra.racks())).as(week.toString()).isPositive());
        extra.racks().keySet().stream().limit(3).forEach(rack -> assertThat(
                left(input, extra.shop(), less(extra.racks(), rack))).as(rack.toString()).isPositive());
    }

    private static <K> SortedMap<K, Integer> less(SortedMap<K, Integer> extra, K by) {
        var less = new TreeMap<>(extra);
        less.merge(by, -1, Integer::sum);
        return less;
    }

    private static int left(PlanInput input, Map<IsoWeek, Integer> shop, Map<RackDay, Integer> racks) {
        var weeks = new TreeMap<>(input.shop().weeks());
        shop.forEach((week, places) -> weeks.put(week, input.shop().in(week) + places));
        var granted = with(input, input.cylinders(), input.racks(), new ShopCapacity(input.shop().perWeek(), weeks));
        var chains = Chains.of(granted).chains();
        return Pass.due(granted, chains, FreePlaces.all(input.racks()).with(racks), Prices.of(granted, chains)).left()
                .size();
    }
}
