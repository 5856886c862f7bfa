package org.collarbook.regulation.engine;

import static org.collarbook.regulation.engine.Tests.verdict;

import java.time.YearMonth;
import java.util.EnumSet;
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

    /**
     * No when its recorded use, or a label that is on record, lets it go without: as horizontal only when made before that
     * month. What is not recorded exempts from nothing.
     */
    public static Test notExempt(Set<Use> uses, Set<Fittings.Label> labels, YearMonth horizontalMadeBefore) {
        Set<Use> ofUse = uses.isEmpty() ? EnumSet.noneOf(Use.class) : EnumSet.copyOf(uses);
        Set<Fittings.Label> ofLabel = labels.isEmpty() ? EnumSet.noneOf(Fittings.Label.class) : EnumSet.copyOf(labels);
        return new Test(Fact.LABELLED_FOR, ReasonCode.MISSING_OVERFILL_PREVENTION, subject -> {
            Use use = subject.facts.use();
            if (use != null && ofUse.contains(use)) {
                return Verdict.NO;
            }
            Fittings fittings = subject.fittings;
            Fittings.Label label = fittings == null ? null : fittings.label();
            return verdict(label == null || !ofLabel.contains(label) && (label != Fittings.Label.HORIZONTAL
                    || subject.manufactured == null || !subject.manufactured.isBefore(horizontalMadeBefore)));
        });
    }
}
