package org.collarbook.regulation.engine;

import java.util.List;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** What the tanks of one site ask for together: the most that any of them does, and what leaves it open. */
final class Expectation {

    final Reasons reasons = new Reasons();
    private @Nullable Rule rule;
    private @Nullable Value value;
    private boolean asked;
    private boolean doubt;
    private boolean off;
    private boolean requirementOff;

    void ask(List<Rule> rules, Subject tank, @Nullable Jurisdiction where) {
        asked = true;
        boolean held = false;
        for (Rule one : rules) {
            Value said = one.valueFor(tank, tank.stretch);
            if (said != null && said.effect instanceof Effect.Rating rating) {
                held = true;
                count(one, said, rating, tank);
            }
        }
        if (!held) {
            doubt = true;
            reasons.add(where == null ? ReasonCode.MISSING_JURISDICTION : ReasonCode.NO_RULE_HELD);
        }
    }

    private void count(Rule one, Value said, Effect.Rating rating, Subject tank) {
        Verdict verdict = concerns(one, tank);
        if (verdict == Verdict.NO) {
            return;
        }
        if (!said.isOn(tank.facts, one.id)) {
            off = true;
            requirementOff |= rating.required();
            reasons.add(said.citing(ReasonCode.RULE_OFF));
        } else if (verdict == Verdict.UNKNOWN) {
            doubt = true;
            missing(one, said, tank);
        } else {
            reasons.add((rating.required() ? ReasonCode.EXTINGUISHER_REQUIRED : ReasonCode.EXTINGUISHER_RECOMMENDED)
                    .citing(said.citation));
            if (rating.isMoreThan(rating())) {
                rule = one;
                value = said;
            }
        }
    }

    private static Verdict concerns(Rule one, Subject tank) {
        Facts facts = tank.facts;
        Specification mark = facts.specification();
        if (facts.kind() != null && !one.head.scope().covers(facts.kind(), mark == null ? null : mark.authority(),
                mark == null ? null : mark.family())) {
            return Verdict.NO;
        }
        Verdict verdict = Rule.all(one.tests, tank);
        return verdict == Verdict.YES && facts.kind() == null ? Verdict.UNKNOWN : verdict;
    }

    private void missing(Rule one, Value said, Subject tank) {
        if (tank.facts.kind() == null) {
            reasons.add(ReasonCode.MISSING_KIND.citing(said.citation));
        }
        for (Test test : one.tests) {
            if (test.check().on(tank) == Verdict.UNKNOWN) {
                reasons.add(test.missing().citing(said.citation));
            }
        }
    }

    private Effect.@Nullable Rating rating() {
        return value != null && value.effect instanceof Effect.Rating rating ? rating : null;
    }

    boolean isNothingAsked() {
        return !asked;
    }

    boolean isRequired() {
        Effect.Rating rating = rating();
        return rating != null && rating.required();
    }

    boolean isInDoubt() {
        return doubt;
    }

    boolean isOff() {
        return off;
    }

    boolean isRequirementOff() {
        return requirementOff;
    }

    @Nullable
    String ruleId() {
        return rule == null ? null : rule.id;
    }

    @Nullable
    Integer atLeast() {
        Effect.Rating rating = rating();
        return rating == null ? null : rating.atLeast();
    }

    @Nullable
    Citation citation() {
        return value == null ? null : value.citation;
    }
}
