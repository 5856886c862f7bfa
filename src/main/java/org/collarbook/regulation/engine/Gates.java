package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.engine.Part.Asks;
import org.jspecify.annotations.Nullable;

/** Asks what must hold beside the clocks; every topic needs a rule that answers it, or nothing may be filled. */
record Gates(Subject subject, Refusals refusals) {

    private static final int EVERY_TOPIC = (1 << Part.Topic.values().length) - 1;

    /** A gate with the value that is in force between two switches. */
    record Line(Rule rule, Asks asks, Value value, Effect.Gate gate, @Nullable Reason unread) {}

    /**
     * The gates that are in force in a stretch, none of whose values hangs on a policy or on another date; and what is
     * told of those that concern every container that they are asked of.
     */
    record Asked(Line[] lines, List<Reason> told) {

        static Asked of(Rule[] gates, int stretch, LocalDate day) {
            List<Line> lines = new ArrayList<>();
            List<Reason> told = new ArrayList<>();
            for (Rule rule : gates) {
                Value value = rule.textIn(stretch);
                if (value != null && value.effect instanceof Effect.Gate gate && rule.part instanceof Asks asks) {
                    Reason unread = value.unreadOn(day);
                    boolean always = rule.tests.length == 0 && value.citation.basis().onByDefault();
                    if (always && unread != null && !told.contains(unread)) {
                        told.add(unread);
                    }
                    lines.add(new Line(rule, asks, value, gate, always ? null : unread));
                }
            }
            return new Asked(lines.toArray(Line[]::new), List.copyOf(told));
        }
    }

    void ask(Asked gates) {
        subject.judging(null);
        refusals.tellAll(gates.told);
        int open = EVERY_TOPIC;
        for (Line line : gates.lines) {
            Verdict concerned = Rule.all(line.rule.tests, subject);
            if (concerned == Verdict.NO) {
                continue;
            }
            Value value = line.value;
            if (!value.isOn(subject.facts, line.rule.id)) {
                refusals.tell(concerned == Verdict.YES ? value.citing(ReasonCode.RULE_OFF) : null);
                continue;
            }
            answer(line, concerned);
            open &= ~(1 << line.asks.question().ordinal());
            refusals.tell(line.unread);
        }
        if (open != 0) {
            refusals.fill.add(ReasonCode.NO_RULE_HELD);
        }
    }

    /** The question answered, either way or for want of a fact. */
    private void answer(Line line, Verdict concerned) {
        Test[] asked = concerned == Verdict.YES ? line.gate.requires() : line.rule.tests;
        Verdict holds = concerned == Verdict.YES ? Rule.all(asked, subject) : Verdict.UNKNOWN;
        if (holds == Verdict.UNKNOWN) {
            missing(asked, line.asks.unknownForbids(), line.value);
        } else if (holds == Verdict.NO) {
            refusals.refuse(line.asks.forbids(), line.value.citing(line.gate.otherwise()));
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
