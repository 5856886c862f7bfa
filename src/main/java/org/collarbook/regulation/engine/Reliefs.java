package org.collarbook.regulation.engine;

import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.engine.Part.Allows;
import org.collarbook.regulation.engine.Part.Relief;
import org.collarbook.regulation.engine.Part.Relieves;

/** What a regime still allows of a container past its date, and of a tank that otherwise stays where it is. */
record Reliefs(Subject subject, Plan plan, Refusals refusals) {

    /** Filled before it fell due, it is used up; told with the sentence that allows it. */
    int ofFilledInTime() {
        for (Rule rule : plan.reliefs) {
            Value value = rule.valueFor(subject, subject.stretch);
            if (value != null && rule.part instanceof Relieves(Relief relief, int allows)
                    && relief == Relief.FILLED_IN_TIME && value.isOn(subject.facts, rule.id)
                    && Rule.all(rule.tests, subject) == Verdict.YES) {
                refusals.tell(value.citing(ReasonCode.USE_UP));
                return allows;
            }
        }
        return 0;
    }

    /** Past its date it may still do this; a fact on which that hangs is asked for. */
    boolean ofOverdue(Allows what) {
        return given(Relief.OVERDUE, what, refusals);
    }

    boolean given(Relief wanted, Allows what, Refusals asked) {
        for (Rule rule : plan.reliefs) {
            Value value = rule.valueFor(subject, subject.stretch);
            if (value == null || !(rule.part instanceof Relieves(Relief relief, int allows))
                    || relief != wanted || (allows & what.bit) == 0) {
                continue;
            }
            Verdict verdict = Rule.all(rule.tests, subject);
            if (verdict == Verdict.YES && !value.isOn(subject.facts, rule.id)) {
                asked.tell(value.citing(ReasonCode.RULE_OFF));
            } else if (verdict == Verdict.YES) {
                asked.tell(wanted == Relief.OVERDUE ? value.citing(ReasonCode.STILL_ALLOWED) : null);
                return true;
            } else if (verdict == Verdict.UNKNOWN) {
                missing(rule, value, what, asked);
            }
        }
        return false;
    }

    private void missing(Rule rule, Value value, Allows what, Refusals asked) {
        for (Test test : rule.tests) {
            if (test.check().on(subject) == Verdict.UNKNOWN) {
                asked.ask(what.bit, value.citing(test.missing()));
            }
        }
    }
}
