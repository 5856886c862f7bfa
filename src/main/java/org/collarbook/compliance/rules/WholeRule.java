package org.collarbook.compliance.rules;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;

import org.collarbook.compliance.RuleBookAnswer;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.jspecify.annotations.Nullable;

/**
 * A rule with all that its file says of it. Of the rules of one topic that apply, the one of the highest
 * {@code precedence} answers; {@code selectedBy} is the date that chooses among the values: that of the evaluation, of
 * the manufacture, or of the last test.
 */
record WholeRule(String id, String jurisdiction, String topic, String title, @Nullable String note, int precedence,
        String selectedBy, boolean onByDefault, Map<String, Object> applies, List<RuleValue> values,
        List<RuleExampleShown> examples, RuleBookAnswer ruleBook) {

    /** {@code gives}: a due month, an outcome, a reason's code or a percentage; absent where others decide. */
    record RuleExampleShown(boolean matching, LocalDate asOf, Map<String, Object> facts, @Nullable String gives) {

        static RuleExampleShown from(RuleInfo.Example example) {
            return new RuleExampleShown(example.matching(), example.asOf(), example.facts(), example.gives());
        }
    }

    static WholeRule from(RuleInfo rule, LocalDate today, RuleBook rules) {
        return new WholeRule(rule.id(), rule.jurisdiction().code(), rule.topic(), rule.title(), rule.note(),
                rule.precedence(), rule.selectedBy(), ValueToday.isOn(rule, today), rule.applies(),
                rule.values().stream().map(RuleValue::from).toList(),
                rule.examples().stream().map(RuleExampleShown::from).toList(), RuleBookAnswer.from(rules));
    }
}
