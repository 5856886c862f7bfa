package org.collarbook.compliance.assessment;

import java.util.List;

import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Considered;
import org.jspecify.annotations.Nullable;

/**
 * What became of one rule, and why; {@code value} and {@code citation} are absent where nothing was in force. A
 * condition that begins with "requires" is the rule's demand: NO is its refusal.
 */
record ConsideredAnswer(String ruleId, String title, String jurisdiction, String topic, Considered.Verdict verdict,
        @Nullable String value, List<Considered.Condition> conditions, @Nullable Citation citation) {

    static ConsideredAnswer from(Considered rule) {
        return new ConsideredAnswer(rule.ruleId(), rule.title(), rule.jurisdiction().code(), rule.topic(),
                rule.verdict(), rule.value(), rule.conditions(), rule.citation());
    }
}
