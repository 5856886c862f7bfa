package org.collarbook.regulation.engine;

import static org.collarbook.regulation.engine.Tests.verdict;

import java.util.Set;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Fittings;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Use;
import org.jspecify.annotations.Nullable;

/** The conditions that a rule can set on valves and labels, and on the uses that it leaves out. */
public final class Appurtenances {

    private Appurtenances() {}

    private static @Nullable Boolean overfillPrevention(Subject subject) {
        Fittings fittings = subject.fittings;
        return fittings == null ? null : fittings.overfillPrevention();
    }

    public static Test overfillPrevention(boolean wanted) {
        return new Test(Fact.OVERFILL_PREVENTION, ReasonCode.MISSING_OVERFILL_PREVENTION, subject -> {
            Boolean fitted = overfillPrevention(subject);
            return fitted == null ? Verdict.UNKNOWN : verdict(fitted == wanted);
        });
    }

    /** Whether one is on record; what nobody looked for is not. */
    public static Test overfillPreventionRecorded(boolean wanted) {
        return new Test(Fact.OVERFILL_PREVENTION, ReasonCode.MISSING_OVERFILL_PREVENTION,
                subject -> verdict(Boolean.TRUE.equals(overfillPrevention(subject)) == wanted));
    }

    /** A label that must be on record: an exemption is not given on an unknown one. */
    public static Test statedLabel(Set<Fittings.Label> labels) {
        Set<Fittings.Label> set = Set.copyOf(labels);
        return new Test(Fact.LABELLED_FOR, ReasonCode.MISSING_OVERFILL_PREVENTION, subject -> verdict(bears(set,
                subject)));
    }

    public static Test statedLabelNot(Set<Fittings.Label> labels) {
        Set<Fittings.Label> set = Set.copyOf(labels);
        return new Test(Fact.LABELLED_FOR, ReasonCode.MISSING_OVERFILL_PREVENTION, subject -> verdict(!bears(set,
                subject)));
    }

    private static boolean bears(Set<Fittings.Label> labels, Subject subject) {
        Fittings fittings = subject.fittings;
        return fittings != null && fittings.label() != null && labels.contains(fittings.label());
    }

    /** No when one of these is its recorded use; an unknown use exempts from nothing. */
    public static Test statedUseNot(Set<Use> uses) {
        Set<Use> set = Set.copyOf(uses);
        return new Test(Fact.USE, ReasonCode.MISSING_USE, subject -> {
            Use use = subject.facts.use();
            return verdict(use == null || !set.contains(use));
        });
    }
}
