package org.collarbook.regulation.engine;

import java.time.LocalDate;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;

/**
 * Asks what must hold beside the clocks. What is unknown bars a fill alone; every topic needs a rule that answers it, or
 * nothing may be filled.
 */
record Gates(Subject subject, Reasons fill, Reasons carry, Reasons use, Reasons told) {

    private static final int EVERY_TOPIC = (1 << Rule.Topic.values().length) - 1;

    void ask(Rule[] gates, LocalDate day) {
        subject.judging(null);
        int stretch = subject.timeline.stretchOf(day);
        int open = EVERY_TOPIC;
        for (Rule rule : gates) {
            Value value = rule.valueFor(subject, stretch);
            if (value == null || !(value.effect instanceof Value.Gate gate)) {
                continue;
            }
            if (!value.isOn(subject.facts, rule.id)) {
                if (Rule.all(rule.tests, subject) == Verdict.YES) {
                    told.add(value.off);
                }
            } else if (answers(rule, gate, value) && rule.gates != null) {
                open &= ~(1 << rule.gates.ordinal());
            }
        }
        if (open != 0) {
            fill.add(ReasonCode.NO_RULE_HELD);
        }
    }

    /** Whether the gate answered its question, either way or for want of a fact. */
    private boolean answers(Rule rule, Value.Gate gate, Value value) {
        Verdict concerned = rule.tests.length == 0 ? Verdict.YES : Rule.all(rule.tests, subject);
        if (concerned == Verdict.NO) {
            return false;
        }
        if (concerned == Verdict.UNKNOWN) {
            missing(rule.tests);
            return true;
        }
        Verdict holds = Rule.all(gate.requires(), subject);
        if (holds == Verdict.UNKNOWN) {
            missing(gate.requires());
        } else if (holds == Verdict.NO) {
            refuse(rule, value.refusal);
        }
        return true;
    }

    private void missing(Test[] tests) {
        for (Test test : tests) {
            if (test.check().on(subject) == Verdict.UNKNOWN) {
                fill.add(test.missing());
            }
        }
    }

    private void refuse(Rule rule, Reason reason) {
        if (rule.forbids.contains(Rule.Allows.FILL)) {
            fill.add(reason);
        }
        if (rule.forbids.contains(Rule.Allows.CARRY)) {
            carry.add(reason);
        }
        if (rule.forbids.contains(Rule.Allows.USE)) {
            use.add(reason);
        }
    }
}
