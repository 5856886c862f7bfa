package org.collarbook.compliance;

import java.time.LocalDate;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

import org.collarbook.regulation.Citation;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Where a stored rule id stands in the regulations, for lists that do not assess each row again. */
@Component
public class Citations {

    private final Map<String, RuleInfo> rules;

    Citations(RuleBook book) {
        rules = book.rules().stream().collect(Collectors.toUnmodifiableMap(RuleInfo::id, Function.identity()));
    }

    /** The citation of the value in force on the day; null for no rule, or one that this rule book does not hold. */
    public @Nullable Citation of(@Nullable String rule, LocalDate day) {
        var info = rule == null ? null : rules.get(rule);
        return info == null
                ? null
                : info.values().stream()
                        .filter(value -> value.policy() == null && !value.from().isAfter(day)
                                && (value.until() == null || value.until().isAfter(day)))
                        .findFirst().map(RuleInfo.DatedValue::citation).orElse(null);
    }
}
