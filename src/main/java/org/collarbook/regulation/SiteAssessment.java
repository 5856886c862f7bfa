package org.collarbook.regulation;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The rule book applied to one site on one day: whether the extinguishers that its tanks ask for are there and kept up.
 * {@code rule}, {@code atLeast} and {@code citation} are of the rule that asks for most, null when none asks;
 * the extinguishers come in the order of the facts.
 */
public record SiteAssessment(LocalDate asOf, Outcome outcome, @Nullable String ruleId, @Nullable Integer atLeast,
        @Nullable Citation citation, List<Reason> reasons, List<Beside> extinguishers) {

    public enum Outcome {
        MET,
        NOT_MET,
        /** Advised and not required, whether it is there or not. */
        RECOMMENDED,
        NOT_REQUIRED,
        UNDETERMINED,
        /** A rule that is switched off would ask for one, or may. */
        RULE_OFF
    }

    /**
     * One extinguisher: its clocks, the worst word of them, and whether it counts. {@code suffices} also looks at the
     * rating and is null where no rating is asked for.
     */
    public record Beside(Status status, Considered.Answer keptUp, Considered.@Nullable Answer suffices,
            List<Clock> requirements, List<Reason> reasons) {

        public Beside {
            requirements = List.copyOf(requirements);
            reasons = List.copyOf(reasons);
        }
    }

    public SiteAssessment {
        reasons = List.copyOf(reasons);
        extinguishers = List.copyOf(extinguishers);
    }

    public boolean gives(ReasonCode code) {
        return reasons.stream().anyMatch(reason -> reason.code() == code);
    }
}
