package org.collarbook.regulation.engine;

import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.engine.Part.Asks;

/** Asks what must hold beside the clocks; every topic needs a rule that answers it, or nothing may be filled. */
record Gates(Subject subject, Refusals refusals) {

    private static final int EVERY_TOPIC = (1 << Part.Topic.values().length) - 1;

    void ask(Rule[] gates) {
        subject.judging(null);
        int open = EVERY_TOPIC;
        for (Rule rule : gates) {
            Value value = rule.valueFor(subject, subject.stretch);
            if (value == null || !(value.effect instanceof Effect.Gate gate) || !(rule.part instanceof Asks asks)) {
                continue;
            }
            if (!value.isOn(subject.facts, rule.id)) {
                if (Rule.all(rule.tests, subject) == Verdict.YES) {
                    refusals.tell(value.citing(ReasonCode.RULE_OFF));
                }
            } else if (answers(rule, asks, gate, value)) {
                refusals.tell(value.unreadOn(subject.asOf));
                open &= ~(1 << asks.question().ordinal());
            }
        }
        if (open != 0) {
            refusals.fill.add(ReasonCode.NO_RULE_HELD);
        }
    }

    /** Whether the gate answered its question, either way or for want of a fact. */
    private boolean answers(Rule rule, Asks asks, Effect.Gate gate, Value value) {
        Verdict concerned = rule.tests.length == 0 ? Verdict.YES : Rule.all(rule.tests, subject);
        if (concerned == Verdict.NO) {
            return false;
        }
        if (concerned == Verdict.UNKNOWN) {
            missing(rule.tests, asks.unknownForbids(), value);
            return true;
        }
        Verdict holds = Rule.all(gate.requires(), subject);
        if (holds == Verdict.UNKNOWN) {
            missing(gate.requires(), asks.unknownForbids(), value);
        } else if (holds == Verdict.NO) {
            refusals.refuse(asks.forbids(), value.citing(gate.otherwise()));
        }
        return true;
    }

    private void missing(Test[] tests, int bars, Value value) {
        for (Test test : tests) {
            if (test.check().on(subject) == Verdict.UNKNOWN) {
                refusals.ask(bars, value.citing(test.missing()));
            }
        }
    }
}
