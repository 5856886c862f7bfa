package org.collarbook.dispatch.plans;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

import org.collarbook.dispatch.plans.Cylinder.Standing;
import org.collarbook.dispatch.plans.PlanInput.DrivenRoute;
import org.collarbook.dispatch.plans.PlanInput.Rack;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/**
 * The plan of small fleets beside every assignment there is, tried one by one from the words of the task: no flow, no
 * chain, no library. What counts, in this order: how many are left over, how many of those late, the days.
 */
class EveryAssignmentTests {

    private static final int FLEETS = 400;

    /** What an assignment costs; less is better. */
    private record Worth(int left, int leftLate, long days) implements Comparable<Worth> {

        private static final Comparator<Worth> ORDER = Comparator.comparingInt(Worth::left)
                .thenComparingInt(Worth::leftLate).thenComparingLong(Worth::days);

        @Override
        public int compareTo(Worth other) {
            return ORDER.compare(this, other);
        }
    }

    @Test
    void noAssignmentIsBetterThanThePlan() {
        int tight = 0;
        int late = 0;
        for (long seed = 1; seed <= FLEETS; seed++) {
            var input = new Fleets(seed, 3, 4, 9, 2, 3).draw();
            var plan = Plan.of(input);
            var search = new Search(input, plan);
            assertThat(search.planned(Standing.OUT_OF_SERVICE)).as("out of service, seed %d", seed)
                    .isEqualTo(search.best(Standing.OUT_OF_SERVICE));
            search.keep(plan.lines().stream().filter(line -> !line.goesToTheShop()).toList());
            var planned = search.planned(Standing.DUE);
            assertThat(planned).as("due, seed %d", seed).isEqualTo(search.best(Standing.DUE));
            assertThat(plan.gap()).as("proof, seed %d", seed).isZero();
            tight += planned.left() > 0 ? 1 : 0;
            late += planned.leftLate() > 0 ? 1 : 0;
        }
        // fleets with room for everybody would prove little
        assertThat(tight).isBetween(FLEETS / 5, FLEETS * 4 / 5);
        assertThat(late).isGreaterThan(10);
    }

    private static final class Search {

        private final PlanInput input;
        private final Plan plan;
        private final Map<RackDay, Integer> racks = new HashMap<>();
        private final Map<IsoWeek, Integer> shop = new HashMap<>();
        private List<Cylinder> cylinders = List.of();
        private @Nullable Worth best;

        Search(PlanInput input, Plan plan) {
            this.input = input;
            this.plan = plan;
        }

        void keep(List<PlanLine> taken) {
            taken.forEach(line -> racks.merge(line.rack(), 1, Integer::sum));
        }

        Worth best(Standing standing) {
            cylinders = input.cylinders().stream().filter(one -> one.standing() == standing)
                    .filter(one -> !options(one).isEmpty()).toList();
            best = null;
            place(0, new Worth(0, 0, 0));
            return Objects.requireNonNull(best);
        }

        Worth planned(Standing standing) {
            var worth = new Worth(0, 0, 0);
            for (var one : input.cylinders()) {
                if (one.standing() == standing && !options(one).isEmpty()) {
                    var line = plan.lines().stream().filter(pulled -> pulled.cylinder().equals(one)).findAny();
                    worth = with(worth, one, line.map(PlanLine::visit).orElse(null));
                }
            }
            return worth;
        }

        private void place(int next, Worth so) {
            if (best != null && so.compareTo(best) >= 0) {
                return;
            }
            if (next == cylinders.size()) {
                best = so;
                return;
            }
            var one = cylinders.get(next);
            for (var visit : options(one)) {
                var rack = new RackDay(visit.day(), visit.vehicle(), one.size());
                var week = IsoWeek.of(visit.day());
                boolean toShop = one.standing() == Standing.DUE;
                if (racks.getOrDefault(rack, 0) < places(rack)
                        && (!toShop || shop.getOrDefault(week, 0) < input.shop().in(week))) {
                    racks.merge(rack, 1, Integer::sum);
                    shop.merge(week, toShop ? 1 : 0, Integer::sum);
                    place(next + 1, with(so, one, visit));
                    racks.merge(rack, -1, Integer::sum);
                    shop.merge(week, toShop ? -1 : 0, Integer::sum);
                }
            }
            place(next + 1, with(so, one, null));
        }

        private int places(RackDay rack) {
            return input.racks().getOrDefault(new Rack(rack.vehicle(), rack.size()), 0);
        }

        private Worth with(Worth so, Cylinder one, @Nullable Visit visit) {
            boolean late = isLate(one);
            if (visit == null) {
                return new Worth(so.left + 1, so.leftLate + (late ? 1 : 0), so.days);
            }
            var first = visits(one).getFirst().day();
            return new Worth(so.left, so.leftLate, so.days + (late
                    ? days(first, visit.day()) * longestLife()
                    : days(visit.day(), one.dueDay())));
        }

        /** A day late weighs more than all the life of another cylinder in this plan. */
        private long longestLife() {
            var farthest = input.cylinders().stream().filter(one -> one.standing() == Standing.DUE)
                    .filter(one -> !isLate(one) && !options(one).isEmpty()).map(Cylinder::dueDay)
                    .max(Comparator.naturalOrder()).filter(day -> day.isAfter(input.through()))
                    .orElse(input.through());
            return days(input.from(), farthest) + 1;
        }

        private static long days(LocalDate from, LocalDate to) {
            return to.toEpochDay() - from.toEpochDay();
        }

        private boolean isLate(Cylinder one) {
            return one.standing() == Standing.OUT_OF_SERVICE
                    || !visits(one).isEmpty() && one.dueDay().isBefore(visits(one).getFirst().day());
        }

        /** The visits that may pull it; none for one that is pulled in time after the plan. */
        private List<Visit> options(Cylinder one) {
            if (isLate(one)) {
                return visits(one);
            }
            if (one.dueDay().isAfter(input.through())) {
                var later = calling(one).stream().filter(
                        route -> route.vehicle() != null
                                && input.racks().containsKey(new Rack(route.vehicle(), one.size())))
                        .map(DrivenRoute::next).filter(Objects::nonNull)
                        .min(Comparator.naturalOrder());
                if (later.isEmpty() || !later.get().isAfter(one.dueDay())) {
                    return List.of();
                }
            }
            return visits(one).stream().filter(visit -> !visit.day().isAfter(one.dueDay())).toList();
        }

        private List<DrivenRoute> calling(Cylinder one) {
            var site = one.site();
            return site == null
                    ? List.of()
                    : input.routes().stream().filter(route -> route.stops().contains(site)).toList();
        }

        private List<Visit> visits(Cylinder one) {
            var visits = new ArrayList<Visit>();
            for (var route : calling(one)) {
                var vehicle = route.vehicle();
                if (vehicle != null && input.racks().containsKey(new Rack(vehicle, one.size()))) {
                    route.visits().forEach(day -> visits.add(new Visit(day, route.id(), vehicle)));
                }
            }
            visits.sort(null);
            return visits;
        }
    }
}
