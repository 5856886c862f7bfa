package org.collarbook.dispatch.plans;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

import org.collarbook.dispatch.plans.Cylinder.Standing;
import org.collarbook.dispatch.plans.PlanInput.Rack;
import org.jgrapht.alg.flow.mincost.CapacityScalingMinimumCostFlow;
import org.jgrapht.alg.flow.mincost.MinimumCostFlowProblem.MinimumCostFlowProblemImpl;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleDirectedWeightedGraph;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The plan of a fleet of some size beside the cheapest flow that JGraphT finds, by another method than OR-Tools, through a
 * network that is laid out otherwise: a node for each cylinder with an arc to each visit that may pull it, no chains.
 */
class SecondMethodTests {

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void jgraphtFindsNoCheaperPlan(long seed) {
        var drawn = new Fleets(seed, 10, 20, 3000, 12, 150).draw();
        var input = new PlanInput(drawn.from(), drawn.through(), drawn.cylinders().stream()
                .filter(one -> one.standing() == Standing.DUE).toList(), drawn.routes(), drawn.racks(), drawn.shop());
        var plan = Plan.of(input);
        var network = new Direct(input, Chains.of(input).chains());
        long left = plan.remainder().stream().filter(one -> one.firstVisit() != null).count();
        assertThat(left).as("as tight as the seed was chosen for").isPositive();
        assertThat(network.cost(plan)).isEqualTo(network.cheapest());
    }

    private static final class Direct {

        private final SimpleDirectedWeightedGraph<Object, DefaultWeightedEdge> graph = new SimpleDirectedWeightedGraph<>(
                DefaultWeightedEdge.class);
        private final Map<DefaultWeightedEdge, Integer> capacities = new HashMap<>();
        private final Map<Cylinder, Chain> chains = new HashMap<>();
        private final PlanInput input;
        private final long longest;
        private final long leftOut;

        Direct(PlanInput input, List<Chain> all) {
            this.input = input;
            var farthest = all.stream().flatMap(chain -> chain.due().stream()).map(Cylinder::dueDay)
                    .max(Comparator.naturalOrder()).filter(day -> day.isAfter(input.through()))
                    .orElse(input.through());
            this.longest = days(input.from(), farthest) + 1;
            all.forEach(chain -> {
                chain.due().forEach(one -> chains.put(one, chain));
                chain.late().forEach(one -> chains.put(one, chain));
            });
            this.leftOut = chains.size() * longest * longest;
            graph.addVertex("out");
            chains.forEach(this::add);
        }

        private static long days(LocalDate from, LocalDate to) {
            return to.toEpochDay() - from.toEpochDay();
        }

        private boolean isLate(Cylinder one) {
            return one.dueDay().isBefore(chains.get(one).visits().getFirst().day());
        }

        private void add(Cylinder one, Chain chain) {
            graph.addVertex(one);
            arc(one, "out", 1, leftOut(one));
            for (int visit = 0; visit < chain.visits().size(); visit++) {
                var day = chain.visits().get(visit).day();
                if (isLate(one) || !day.isAfter(one.dueDay())) {
                    var rack = chain.rack(visit);
                    if (graph.addVertex(rack)) {
                        var week = IsoWeek.of(rack.day());
                        if (graph.addVertex(week)) {
                            arc(week, "out", input.shop().in(week), 0);
                        }
                        arc(rack, week, input.racks().get(new Rack(rack.vehicle(), rack.size())), 0);
                    }
                    if (graph.getEdge(one, rack) == null) {
                        arc(one, rack, 1, days(one, day));
                    }
                }
            }
        }

        private long leftOut(Cylinder one) {
            return isLate(one) ? 2 * leftOut : leftOut;
        }

        private long days(Cylinder one, LocalDate day) {
            return isLate(one)
                    ? days(chains.get(one).visits().getFirst().day(), day) * longest
                    : days(day, one.dueDay());
        }

        private void arc(Object from, Object to, int capacity, long cost) {
            var edge = graph.addEdge(from, to);
            graph.setEdgeWeight(edge, cost);
            capacities.put(edge, capacity);
        }

        long cheapest() {
            var problem = new MinimumCostFlowProblemImpl<>(graph,
                    node -> node instanceof Cylinder ? 1 : node.equals("out") ? -chains.size() : 0, capacities::get,
                    edge -> 0);
            return Math.round(new CapacityScalingMinimumCostFlow<Object, DefaultWeightedEdge>()
                    .getMinimumCostFlow(problem).getCost());
        }

        long cost(Plan plan) {
            long pulled = plan.lines().stream().mapToLong(line -> days(line.cylinder(), line.visit().day())).sum();
            return pulled + plan.remainder().stream().filter(left -> left.firstVisit() != null)
                    .mapToLong(left -> leftOut(left.cylinder())).sum();
        }
    }
}
