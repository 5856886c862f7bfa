package org.collarbook.compliance.rules;

import java.time.LocalDate;

import org.collarbook.regulation.Basis;
import org.collarbook.regulation.RuleInfo;
import org.jspecify.annotations.Nullable;

/** One line of the list: what the rule says today; without {@code basis} and {@code inForce} nothing is in force. */
record RuleSummary(String id, String jurisdiction, String topic, String title, boolean onByDefault,
        @Nullable Basis basis, @Nullable RuleValue inForce) {

    static RuleSummary from(RuleInfo rule, LocalDate today) {
        var value = ValueToday.of(rule, today).map(RuleValue::from).orElse(null);
        return new RuleSummary(rule.id(), rule.jurisdiction().code(), rule.topic(), rule.title(),
                value != null && value.onByDefault(), value == null ? null : value.citation().basis(), value);
    }
}
