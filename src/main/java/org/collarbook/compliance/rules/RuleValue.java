package org.collarbook.compliance.rules;

import java.time.LocalDate;

import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Policy;
import org.collarbook.regulation.RuleInfo.DatedValue;
import org.jspecify.annotations.Nullable;

/**
 * What a rule says from one day until the day before another. {@code policy} must be asked for in {@code policies};
 * {@code unread} is a later amendment that is known and was not read.
 */
record RuleValue(LocalDate from, @Nullable LocalDate until, @Nullable Policy policy, String value,
        boolean onByDefault, @Nullable String unread, Citation citation) {

    static RuleValue from(DatedValue value) {
        return new RuleValue(value.from(), value.until(), value.policy(), value.value(), value.onByDefault(),
                value.unread(), value.citation());
    }
}
