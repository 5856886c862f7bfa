package org.collarbook.holds.web;

import java.util.Arrays;
import java.util.List;

import org.collarbook.holds.HoldReason;
import org.collarbook.holds.LiftedBy;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Method;

/** A reason, what lifts it (from a stationary tank, too), and by which work where a requalification does. */
record HoldReasonAnswer(HoldReason reason, String text, Citation citation, List<LiftedBy> liftedBy,
        List<LiftedBy> liftedByOfStationaryTank, List<Method> requalifications) {

    static HoldReasonAnswer from(HoldReason reason) {
        return new HoldReasonAnswer(reason, reason.sentence(), reason.citation(),
                reason.liftedBy().stream().sorted().toList(),
                reason.liftedBy(ContainerKind.STATIONARY_TANK).stream().sorted().toList(),
                Arrays.stream(Method.values()).filter(reason::isLiftedBy).toList());
    }
}
