package org.collarbook.regulation.engine;

import static org.collarbook.regulation.engine.Tests.verdict;

import java.math.BigDecimal;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;

/** The conditions that a rule can name about what somebody found who looked at the container. */
public final class Findings {

    private Findings() {}

    /** An empty list is a look that found none; a condition without the list is one in which nobody looked for damage. */
    public static Test damaged(boolean wanted) {
        return new Test(Fact.CONDITION, ReasonCode.MISSING_CONDITION, subject -> {
            Condition condition = subject.facts.condition();
            return condition == null || condition.damage() == null
                    ? Verdict.UNKNOWN
                    : verdict(condition.damage().isEmpty() != wanted);
        });
    }

    public static Test overheated(boolean wanted) {
        return new Test(Fact.CONDITION, ReasonCode.MISSING_CONDITION, subject -> {
            Condition condition = subject.facts.condition();
            return condition == null ? Verdict.UNKNOWN : verdict(isTrue(condition.overheated()) == wanted);
        });
    }

    public static Test fire(boolean wanted) {
        return new Test(Fact.CONDITION, ReasonCode.MISSING_CONDITION, subject -> {
            Condition condition = subject.facts.condition();
            return condition == null ? Verdict.UNKNOWN : verdict(isTrue(condition.fire()) == wanted);
        });
    }

    private static boolean isTrue(@Nullable Boolean finding) {
        return finding != null && finding;
    }

    /** A fire on record; where nobody looked there is none on record, and filling is refused for that alone. */
    public static Test recordedFire(boolean wanted) {
        return new Test(Fact.CONDITION, ReasonCode.MISSING_CONDITION, subject -> {
            Condition condition = subject.facts.condition();
            return verdict((condition != null && isTrue(condition.fire())) == wanted);
        });
    }

    public static Test tareLossUnder(BigDecimal percent) {
        return new Test(Fact.CONDITION, ReasonCode.MISSING_CONDITION, subject -> {
            Condition condition = subject.facts.condition();
            BigDecimal lost = condition == null ? null : condition.tareLossPercent();
            return condition == null ? Verdict.UNKNOWN : verdict(lost == null || lost.compareTo(percent) < 0);
        });
    }

    public static Test condemned(boolean wanted) {
        return new Test(Fact.CONDITION, ReasonCode.MISSING_CONDITION,
                subject -> verdict(subject.condemned() == wanted));
    }
}
