package org.collarbook.regulation.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.collarbook.regulation.Considered;
import org.collarbook.regulation.Considered.Answer;
import org.collarbook.regulation.Considered.Condition;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** What the facts say to each condition of one rule: {@code laidOut} of what is stamped, {@code asked} of the rest. */
record Answers(List<Condition> laidOut, List<Condition> asked) {

    static Answers of(Rule rule, @Nullable Value value, Subject subject) {
        List<Condition> asked = new ArrayList<>();
        for (Test test : rule.tests) {
            asked.add(answer(test, "", subject));
        }
        if (value != null && value.effect instanceof Effect.Gate gate) {
            for (Test test : gate.requires()) {
                asked.add(answer(test, "requires ", subject));
            }
        }
        if (value != null && value.effect instanceof Effect.ServiceLife life && subject.manufactured != null) {
            asked.add(new Condition("service life over", Fact.MANUFACTURED.field(),
                    Outcome.isPast(subject.manufactured.plusMonths(life.months()), subject.asOf)
                            ? Answer.YES
                            : Answer.NO));
        }
        return new Answers(laidOut(rule.head.scope(), subject), asked);
    }

    private static Condition answer(Test test, String before, Subject subject) {
        return new Condition(before + test.condition(), test.fact().field(),
                Answer.valueOf(test.check().on(subject).name()));
    }

    private static List<Condition> laidOut(Rule.Scope scope, Subject subject) {
        Specification specification = subject.facts.specification();
        List<Condition> laidOut = new ArrayList<>();
        laidOut.add(among("kind", Fact.KIND, scope.kinds(), subject.facts.kind()));
        if (!scope.families().isEmpty()) {
            laidOut.add(among("family", Fact.SPECIFICATION, scope.families(),
                    specification == null ? null : specification.family()));
        }
        if (!scope.authorities().isEmpty()) {
            laidOut.add(among("authority", Fact.SPECIFICATION, scope.authorities(),
                    specification == null ? null : specification.authority()));
        }
        return laidOut;
    }

    private static Condition among(String name, Fact fact, Set<?> wanted, @Nullable Object given) {
        return new Condition(name + ": " + new TreeSet<>(wanted), fact.field(),
                given == null ? Answer.UNKNOWN : wanted.contains(given) ? Answer.YES : Answer.NO);
    }

    Verdict scope() {
        boolean no = laidOut.stream().anyMatch(one -> one.holds() == Answer.NO);
        boolean unknown = laidOut.stream().anyMatch(one -> one.holds() == Answer.UNKNOWN);
        return no ? Verdict.NO : unknown ? Verdict.UNKNOWN : Verdict.YES;
    }

    /** Of a rule for other containers nothing further is asked. */
    List<Condition> told(Considered.Verdict verdict) {
        List<Condition> told = new ArrayList<>(laidOut);
        if (verdict != Considered.Verdict.OF_OTHER_CONTAINERS) {
            told.addAll(asked);
        }
        return List.copyOf(told);
    }
}
