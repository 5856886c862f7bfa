package org.collarbook.regulation.rulebook;

import java.time.LocalDate;
import java.util.Map;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.RuleInfo;

/**
 * A case that a rule decides ({@code matching}), with what it gives: a due month, an outcome's name, a reason's code or
 * a percentage; or one that it leaves to others.
 */
public record RuleExample(String ruleId, boolean matching, LocalDate asOf, Facts facts, String gives,
        Map<String, Object> shown) {

    static RuleExample read(String id, boolean matching, Jurisdiction jurisdiction, Fields fields) {
        LocalDate asOf = fields.date("asOf");
        Facts facts = FactsReader.read(jurisdiction, fields.child("facts"));
        String gives = matching ? fields.text("gives") : "";
        Map<String, Object> shown = fields.child("facts").asMap();
        fields.done();
        return new RuleExample(id, matching, asOf, facts, gives, shown);
    }

    RuleInfo.Example info() {
        return new RuleInfo.Example(matching, asOf, shown, matching ? gives : null);
    }
}
