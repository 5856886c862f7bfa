package org.collarbook.regulation.engine;

import java.time.LocalDate;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Outcome.Due;
import org.collarbook.regulation.Outcome.NotRequired;
import org.collarbook.regulation.ReasonCode;

/** Judges the latest fill by the marks that the container then bore and the rule then in force. */
final class Fills {

    private Fills() {}

    static ReasonCode judge(Plan.Group group, Subject subject) {
        LocalDate filledOn = subject.filledOn;
        if (filledOn == null) {
            return ReasonCode.MISSING_FILL;
        }
        if (subject.manufactured != null && filledOn.isBefore(subject.manufactured.atDay(1))) {
            return ReasonCode.FILL_NOT_JUDGED;
        }
        Outcome then = Clocks.read(group, subject, filledOn).outcome();
        if (then instanceof NotRequired || then == null && isHeld(group, subject, filledOn)) {
            return ReasonCode.USE_UP;
        }
        if (!(then instanceof Due due)) {
            return ReasonCode.FILL_NOT_JUDGED;
        }
        return due.overdueOn(filledOn) ? ReasonCode.FILLED_WHILE_OVERDUE : ReasonCode.USE_UP;
    }

    /** A clock that did not run yet owed nothing; one whose rules of that day are not held, or are off, may have. */
    private static boolean isHeld(Plan.Group group, Subject subject, LocalDate day) {
        int stretch = subject.timeline.stretchOf(day);
        for (Rule rule : group.rules()) {
            Value value = rule.valueFor(subject, stretch);
            if (value != null && value.isOn(subject.facts, rule.id)) {
                return true;
            }
        }
        return false;
    }
}
