package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.util.List;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Fittings;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.StandingHold;
import org.collarbook.regulation.Status;
import org.collarbook.regulation.engine.Part.Allows;

/** What keeps a container out of service whatever its dates say: condemned, rejected, on hold, found damaged. */
record Standing(Permissions permissions, Subject subject, Plan plan) {

    void count() {
        Refusals refusals = permissions.refusals;
        if (subject.condemned()) {
            permissions.worsen(Status.CONDEMNED);
            if (!refusals.fill.has(ReasonCode.CONDEMNED)) {
                refusals.refuse(Allows.ALL, plan.cited(ReasonCode.CONDEMNED, subject));
            }
        }
        if (subject.rejected()) {
            permissions.worsen(Status.REJECTED);
            refusals.refuse(Allows.ALL, plan.cited(ReasonCode.REJECTED, subject));
        }
        if (subject.facts.requalifications() == null) {
            // also where no clock needs the history: a rejection or condemnation may stand in it
            refusals.refuse(Allows.ALL, ReasonCode.MISSING_REQUALIFICATIONS.reason());
        }
        List<StandingHold> holds = subject.facts.holds();
        if (holds == null) {
            refusals.fill.add(ReasonCode.MISSING_HOLDS);
        }
        for (int i = 0; holds != null && i < holds.size(); i++) {
            hold(holds.get(i), refusals);
        }
        Fittings fittings = subject.fittings;
        if (fittings != null && Boolean.FALSE.equals(fittings.reliefValve())) {
            refusals.refuse(Allows.ALL, plan.cited(ReasonCode.RELIEF_VALVE_REMOVED, subject));
        }
        Condition condition = subject.facts.condition();
        if (condition != null) {
            found(condition, refusals);
        }
    }

    /** What was recorded stands where no rule that was read speaks of it, and is not told twice where one does. */
    private static void found(Condition condition, Refusals refusals) {
        List<String> damage = condition.damage();
        if (damage != null && !damage.isEmpty()) {
            refusals.refuseOnce(ReasonCode.DAMAGED);
        }
        if (Boolean.TRUE.equals(condition.overheated())) {
            refusals.refuseOnce(ReasonCode.OVERHEATED);
        }
        if (Boolean.TRUE.equals(condition.fire())) {
            refusals.refuseOnce(ReasonCode.FIRE_EXPOSED);
        }
    }

    private static String text(StandingHold hold) {
        String named = ReasonCode.ON_HOLD.text() + " " + hold.reason();
        return hold.text() == null ? named : named + ": " + hold.text();
    }

    private void hold(StandingHold hold, Refusals refusals) {
        LocalDate placedOn = hold.placedOn();
        if (placedOn != null && placedOn.isAfter(subject.asOf)) {
            subject.leaveOut();
            return;
        }
        permissions.worsen(Status.ON_HOLD);
        refusals.refuse(Allows.ALL, new Reason(ReasonCode.ON_HOLD, text(hold), hold.citation()));
    }
}
