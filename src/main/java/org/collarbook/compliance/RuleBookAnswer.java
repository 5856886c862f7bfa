package org.collarbook.compliance;

import org.collarbook.regulation.RuleBook;

/** Which rule book answered, by what evaluator: under these two it is stored whole and can be asked again. */
public record RuleBookAnswer(String hash, String engineVersion) {

    public static RuleBookAnswer from(RuleBook rules) {
        return new RuleBookAnswer(rules.hash(), rules.engineVersion());
    }
}
