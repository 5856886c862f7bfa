package org.collarbook.regulation.engine;

import java.util.List;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Outcome.Due;
import org.collarbook.regulation.Outcome.Undetermined;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/**
 * What one clock says, with the rule and the value behind it and the mark it ran from. With no outcome the requirement
 * does not run; {@code told} then says why, where there is anything to say.
 */
record Reading(Requirement requirement, @Nullable Outcome outcome, @Nullable Rule rule, @Nullable Value value,
        @Nullable Requalification mark, @Nullable Reason told) {

    static final Reading NOTHING = new Reading(Requirement.SHELL, null, null, null, null, null);

    static Reading told(Reason reason) {
        return new Reading(Requirement.SHELL, null, null, null, null, reason);
    }

    static Reading undetermined(Requirement requirement, ReasonCode code) {
        return new Reading(requirement, new Undetermined(List.of(code.reason())), null, null, null, null);
    }

    /** Of two marks of one month the more restrictive governs, so that their order does not matter. */
    Reading orWorse(Reading other) {
        if (outcome == null || other.outcome == null) {
            return outcome == null ? other : this;
        }
        int difference = rank(other.outcome) - rank(outcome);
        if (difference == 0 && outcome instanceof Due a && other.outcome instanceof Due b) {
            int months = a.month().compareTo(b.month());
            return months == 0 ? withoutRin(other) : months < 0 ? this : other;
        }
        return difference > 0 ? other : this;
    }

    private Reading withoutRin(Reading other) {
        return other.mark != null && other.mark.lacksRin() ? other : this;
    }

    private static int rank(Outcome outcome) {
        return switch (outcome) {
            case Outcome.NotRequired _ -> 0;
            case Due _ -> 1;
            case Outcome.OtherAuthority _ -> 2;
            case Undetermined _ -> 3;
            case Outcome.Condemned _ -> 4;
        };
    }
}
