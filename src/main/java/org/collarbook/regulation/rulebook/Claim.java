package org.collarbook.regulation.rulebook;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleInfo.DatedValue;
import org.collarbook.regulation.engine.Effect;
import org.collarbook.regulation.engine.Rule;

/** That one value of a rule answers a requirement, under the rule's conditions, for some marks and some time. */
record Claim(Rule.Head head, Requirement requirement, Map<String, Object> applies, ValueReader.Read value) {

    /** Whether some container could get an answer from both, with nothing to say which goes first. */
    boolean conflictsWith(Claim other) {
        return requirement == other.requirement && head.precedence() == other.head.precedence()
                && !head.id().equals(other.head.id()) && (head.jurisdiction().isWithin(other.head.jurisdiction())
                        || other.head.jurisdiction().isWithin(head.jurisdiction()))
                && meet(head.scope().kinds(), other.head.scope().kinds())
                && meetOrAny(head.scope().families(), other.head.scope().families())
                && meetOrAny(head.scope().authorities(), other.head.scope().authorities())
                && inForceTogether(value.shown(), other.value.shown()) && speakOfOneMark(other)
                && !Conditions.exclude(applies, other.applies);
    }

    private static boolean meet(Set<?> one, Set<?> other) {
        return !Collections.disjoint(one, other);
    }

    private static boolean meetOrAny(Set<?> one, Set<?> other) {
        return one.isEmpty() || other.isEmpty() || meet(one, other);
    }

    static boolean inForceTogether(DatedValue a, DatedValue b) {
        boolean apart = a.until() != null && !b.from().isBefore(a.until())
                || b.until() != null && !a.from().isBefore(b.until());
        return a.policy() == b.policy() && !apart;
    }

    private boolean speakOfOneMark(Claim other) {
        return atFirst() && other.atFirst() || meet(methods(), other.methods())
                || datesBareMarks() && other.isAfterMarks() || isAfterMarks() && other.datesBareMarks();
    }

    /** A mark that tells no method may be any, so what dates it stands beside all that speak of marks. */
    private boolean datesBareMarks() {
        return value.effect() instanceof Effect.Periods periods && periods.isForAnyMethod();
    }

    private boolean isAfterMarks() {
        return !(value.effect() instanceof Effect.Periods periods) || periods.isAfterMarks()
                || requirement != Requirement.SHELL;
    }

    private boolean atFirst() {
        return switch (value.effect()) {
            case Effect.Periods periods -> periods.atFirst();
            case Effect.NotRequired(Method after) -> after == null;
            default -> true;
        };
    }

    private Set<Method> methods() {
        return switch (value.effect()) {
            case Effect.Periods periods -> periods.methods();
            case Effect.NotRequired(Method after) when after != null -> EnumSet.of(after);
            default -> EnumSet.allOf(Method.class);
        };
    }
}
