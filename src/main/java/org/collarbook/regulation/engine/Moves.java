package org.collarbook.regulation.engine;

import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Permission;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.engine.Part.Allows;
import org.collarbook.regulation.engine.Part.Relief;

/** Whether it may go by road empty; and a stationary tank at all, which only stated exceptions let travel. */
final class Moves {

    private Moves() {}

    static Permission judge(Subject subject, Plan plan, Refusals refusals) {
        ContainerKind kind = subject.facts.kind();
        Refusals empty = new Refusals();
        if (kind == null) {
            empty.carry.add(ReasonCode.MISSING_KIND);
        } else if (!subject.knownEmpty()) {
            empty.carry.add(ReasonCode.MISSING_EMPTIED);
        }
        if (kind == ContainerKind.STATIONARY_TANK) {
            travels(subject, plan, refusals);
            subject.takenAsEmpty(true);
            travels(subject, plan, empty);
            subject.takenAsEmpty(false);
        } else if (kind == ContainerKind.EXTINGUISHER) {
            empty.carry.add(ReasonCode.NO_RULE_HELD);
        }
        return Permission.unless(empty.carry.list());
    }

    private static void travels(Subject subject, Plan plan, Refusals refusals) {
        Refusals asked = new Refusals();
        if (!new Reliefs(subject, plan, asked).given(Relief.MOVE, Allows.CARRY, asked)) {
            boolean silent = asked.carry.isEmpty();
            refusals.carry.addAll(asked.carry);
            refusals.carry.add(silent
                    ? plan.cited(ReasonCode.NOT_TO_BE_MOVED, subject)
                    : ReasonCode.NOT_TO_BE_MOVED.reason());
        }
    }
}
