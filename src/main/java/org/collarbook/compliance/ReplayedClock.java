package org.collarbook.compliance;

import java.time.LocalDate;
import java.util.List;

import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/**
 * One clock of a container as the rules answer it on a day: what a stored one says, and the word that is derived from it
 * for that day.
 */
public record ReplayedClock(Requirement requirement, @Nullable Jurisdiction jurisdiction, String standing,
        @Nullable LocalDate due, Status status, @Nullable String rule, List<ReasonCode> reasons) {

    public ReplayedClock {
        reasons = List.copyOf(reasons);
    }
}
