package org.collarbook.dispatch.plans;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

import org.collarbook.dispatch.plans.Chain.Group;
import org.collarbook.dispatch.plans.PlanInput.ShopCapacity;
import org.collarbook.dispatch.plans.PlanLine.Why;
import org.collarbook.dispatch.plans.PullNetwork.Strand;

/**
 * One flow and whom it pulls when: first that of what is out of service, by the racks alone, then on the places that are left that of
 * what is due.
 */
final class Pass {

    /** Whom nothing pulls, with the last of the visits that would be in time. */
    record Left(Cylinder cylinder, Chain chain, int lastVisit) {}

    private final PullNetwork network;
    private final CheapestFlow flow;
    private final PlanInput input;
    private final List<PlanLine> lines = new ArrayList<>();
    private final List<Left> left = new ArrayList<>();

    private Pass(PlanInput input, PullNetwork network) {
        this.input = input;
        this.network = network;
        this.flow = CheapestFlow.through(network.network());
    }

    static Pass outOfService(PlanInput input, List<Chain> chains, FreePlaces places, Prices prices) {
        var network = new PullNetwork(places, null, prices, false);
        var strands = outOfService(network, chains);
        var pass = new Pass(input, network);
        strands.forEach(strand -> pass.onward(strand, strand.chain().outOfService()));
        return pass;
    }

    static Pass due(PlanInput input, List<Chain> chains, FreePlaces places, Prices prices) {
        var network = new PullNetwork(places, input.shop(), prices, false);
        var late = chains.stream().filter(chain -> !chain.late().isEmpty()).toList();
        var due = chains.stream().filter(chain -> !chain.due().isEmpty()).toList();
        network.share(joined(late, due));
        var lateStrands = late.stream().map(chain -> network.onward(chain, chain.late().size())).toList();
        var groups = due.stream().map(Chain::groups).toList();
        var dueStrands = new ArrayList<Strand>();
        for (int chain = 0; chain < due.size(); chain++) {
            dueStrands.add(network.back(due.get(chain), groups.get(chain)));
        }
        var pass = new Pass(input, network);
        lateStrands.forEach(strand -> pass.onward(strand, strand.chain().late()));
        for (int chain = 0; chain < due.size(); chain++) {
            pass.back(dueStrands.get(chain), groups.get(chain));
        }
        return pass;
    }

    /** The least that is missing for those out of service. */
    static ExtraCapacity extraOutOfService(List<Chain> chains, FreePlaces places, Prices prices) {
        var network = new PullNetwork(places, null, prices, true);
        outOfService(network, chains);
        return network.extra(CheapestFlow.through(network.network()));
    }

    /** The least that is missing for those that are due. */
    static ExtraCapacity extraDue(List<Chain> chains, FreePlaces places, ShopCapacity shop, Prices prices) {
        var network = new PullNetwork(places, shop, prices, true);
        var late = chains.stream().filter(chain -> !chain.late().isEmpty()).toList();
        var due = chains.stream().filter(chain -> !chain.due().isEmpty()).toList();
        network.share(joined(late, due));
        late.forEach(chain -> network.onward(chain, chain.late().size()));
        due.forEach(chain -> network.back(chain, chain.groups()));
        return network.extra(CheapestFlow.through(network.network()));
    }

    private static List<Strand> outOfService(PullNetwork network, List<Chain> chains) {
        var out = chains.stream().filter(chain -> !chain.outOfService().isEmpty()).toList();
        network.share(out);
        return out.stream().map(chain -> network.onward(chain, chain.outOfService().size())).toList();
    }

    private static List<Chain> joined(List<Chain> some, List<Chain> more) {
        var all = new ArrayList<>(some);
        all.addAll(more);
        return all;
    }

    private void onward(Strand strand, List<Cylinder> cylinders) {
        int pulled = cylinders.size() - Math.toIntExact(flow.flows()[strand.leaves()[0]]);
        leave(strand.chain(), strand.chain().visits().size() - 1, cylinders.subList(pulled, cylinders.size()));
        assign(strand, cylinders.subList(0, pulled));
    }

    /** The earliest deadline first, which no other order betters, and of those stop by stop. */
    private void back(Strand strand, List<Group> groups) {
        var pulled = new ArrayList<Cylinder>();
        for (int group = 0; group < groups.size(); group++) {
            var cylinders = groups.get(group).cylinders();
            int staying = cylinders.size() - Math.toIntExact(flow.flows()[strand.leaves()[group]]);
            leave(strand.chain(), groups.get(group).deadline(), cylinders.subList(staying, cylinders.size()));
            pulled.addAll(cylinders.subList(0, staying));
        }
        var chain = strand.chain();
        pulled.sort(Comparator.comparingInt((Cylinder one) -> chain.deadline(one.dueDay()))
                .thenComparing(Cylinder.BY_STOP));
        assign(strand, pulled);
    }

    private void leave(Chain chain, int lastVisit, List<Cylinder> cylinders) {
        cylinders.forEach(one -> left.add(new Left(one, chain, lastVisit)));
    }

    private void assign(Strand strand, List<Cylinder> cylinders) {
        int next = 0;
        for (int visit = 0; visit < strand.pulls().length; visit++) {
            for (long places = flow.flows()[strand.pulls()[visit]]; places > 0; places--) {
                lines.add(line(cylinders.get(next++), strand.chain().visits().get(visit)));
            }
        }
        if (next != cylinders.size()) {
            throw new IllegalStateException(next + " of " + cylinders.size() + " cylinders have a visit");
        }
    }

    private PlanLine line(Cylinder one, Visit visit) {
        if (one.standing() == Cylinder.Standing.OUT_OF_SERVICE) {
            return new PlanLine(one, visit, Why.OUT_OF_SERVICE);
        }
        return new PlanLine(one, visit, one.dueDay().isBefore(input.from())
                ? Why.OVERDUE
                : one.dueDay().isBefore(visit.day()) ? Why.DUE_BEFORE_FIRST_VISIT : Why.DUE);
    }

    List<PlanLine> lines() {
        return lines;
    }

    List<Left> left() {
        return left;
    }

    long gap() {
        return flow.gap(network.network());
    }
}
