package org.collarbook.regulation.engine;

import org.collarbook.regulation.Condition;
import org.collarbook.regulation.ReasonCode;

/** Asks what must hold beside the clocks; every topic needs a rule that answers it, or nothing may be filled. */
record Gates(Subject subject, Refusals refusals) {

    private static final int EVERY_TOPIC = (1 << Part.Topic.values().length) - 1;

    void ask(Questions questions) {
        subject.judging(null);
        boolean sound = Condition.SOUND.equals(subject.facts.condition());
        Questions.Asked asked = sound ? questions.ofASound() : questions.ofAny();
        refusals.tellAll(questions.told());
        int open = EVERY_TOPIC & ~asked.answered();
        for (Questions.Line line : asked.lines()) {
            Verdict concerned = Rule.all(line.tests(), subject);
            if (concerned == Verdict.NO) {
                continue;
            }
            Value value = line.value();
            if (!value.isOn(subject.facts, line.rule().id)) {
                refusals.tell(concerned == Verdict.YES ? value.citing(ReasonCode.RULE_OFF) : null);
                continue;
            }
            answer(line, concerned);
            open &= ~line.topic();
            refusals.tell(line.unread());
        }
        if (open != 0) {
            refusals.fill.add(ReasonCode.NO_RULE_HELD);
        }
    }

    /** The question answered, either way or for want of a fact. */
    private void answer(Questions.Line line, Verdict concerned) {
        Test[] asked = concerned == Verdict.YES ? line.requires() : line.tests();
        Verdict holds = concerned == Verdict.YES ? Rule.all(asked, subject) : Verdict.UNKNOWN;
        if (holds == Verdict.UNKNOWN) {
            missing(asked, line.asks().unknownForbids(), line.value());
        } else if (holds == Verdict.NO) {
            refusals.refuse(line.asks().forbids(), line.value().citing(line.gate().otherwise()));
        }
    }

    private void missing(Test[] tests, int bars, Value value) {
        for (Test test : tests) {
            if (test.check().on(subject) == Verdict.UNKNOWN) {
                refusals.ask(bars, value.citing(test.missing()));
            }
        }
    }
}
