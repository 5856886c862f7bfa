package org.collarbook.regulation.rulebook;

import java.time.LocalDate;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;

/**
 * A case that a rule decides ({@code matching}), with what it gives: a due month, an outcome's name, a reason's code or
 * a percentage; or one that it leaves to others.
 */
public record RuleExample(String ruleId, boolean matching, LocalDate asOf, Facts facts, String gives) {

    static RuleExample read(String id, boolean matching, Jurisdiction jurisdiction, Fields fields) {
        LocalDate asOf = fields.date("asOf");
        Facts facts = FactsReader.read(jurisdiction, fields.child("facts"));
        String gives = matching ? fields.text("gives") : "";
        fields.done();
        return new RuleExample(id, matching, asOf, facts, gives);
    }
}
