package org.collarbook.compliance.rules;

import java.time.LocalDate;
import java.util.Optional;

import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.RuleInfo.DatedValue;

/** What a rule says on one day: its text; or, where it has none then, the reading that a policy brings. */
final class ValueToday {

    private ValueToday() {}

    static Optional<DatedValue> of(RuleInfo rule, LocalDate today) {
        var inForce = rule.values().stream().filter(value -> value.inForceOn(today)).toList();
        return inForce.stream().filter(value -> value.policy() == null).findFirst()
                .or(() -> inForce.stream().findFirst());
    }

    static boolean isOn(RuleInfo rule, LocalDate today) {
        return of(rule, today).map(DatedValue::onByDefault).orElse(false);
    }
}
