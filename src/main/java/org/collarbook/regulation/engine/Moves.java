package org.collarbook.regulation.engine;

import java.util.List;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Permission;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.engine.Part.Allows;
import org.collarbook.regulation.engine.Part.Relief;

/** Whether it may go by road empty; and a stationary tank at all, which only stated exceptions let travel. */
final class Moves {

    private Moves() {}

    private static final Permission NOT_KNOWN_EMPTY = new Permission(false, List.of(ReasonCode.MISSING_EMPTIED
            .reason()));

    static Permission judge(Subject subject, Plan plan, Refusals refusals) {
        ContainerKind kind = subject.facts.kind();
        if (kind == null) {
            return new Permission(false, List.of(ReasonCode.MISSING_KIND.reason()));
        }
        return switch (kind) {
            case CYLINDER, CARGO_TANK, PORTABLE_TANK -> subject.knownEmpty() ? Permission.ALLOWED : NOT_KNOWN_EMPTY;
            case STATIONARY_TANK -> ofATankThatStays(subject, plan, refusals);
            case EXTINGUISHER -> new Permission(false, List.of(ReasonCode.NO_RULE_HELD.reason()));
        };
    }

    private static Permission ofATankThatStays(Subject subject, Plan plan, Refusals refusals) {
        travels(subject, plan, refusals);
        Refusals empty = new Refusals();
        if (!subject.knownEmpty()) {
            empty.carry.add(ReasonCode.MISSING_EMPTIED);
        }
        subject.takenAsEmpty(true);
        travels(subject, plan, empty);
        subject.takenAsEmpty(false);
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
