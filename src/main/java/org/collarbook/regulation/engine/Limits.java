package org.collarbook.regulation.engine;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.FillingLimit;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** Works out the most that may be put in, by weight. */
final class Limits {

    private static final BigDecimal LARGE_GALLONS = new BigDecimal(1200);
    private static final BigDecimal HUNDRED = new BigDecimal(100);

    private Limits() {}

    static FillingLimit limit(Plan plan, Subject subject, @Nullable BigDecimal gravity) {
        WaterCapacity capacity = subject.facts.waterCapacity();
        Reasons missing = missing(gravity, capacity);
        Rule asked = null;
        for (Rule rule : plan.densities) {
            Value value = rule.valueFor(subject, subject.stretch);
            if (value == null || !value.isOn(subject.facts, rule.id)
                    || !(value.effect instanceof Effect.Densities table)) {
                continue;
            }
            Verdict verdict = Rule.all(rule.tests, subject);
            if (verdict == Verdict.YES && gravity != null && capacity != null) {
                FillingLimit limit = lookUp(rule, value, table, capacity, gravity);
                Reasons doubts = doubts(plan.gates, subject, gravity);
                return limit instanceof FillingLimit.Unknown || doubts.isEmpty()
                        ? limit
                        : new FillingLimit.Unknown(doubts.list());
            }
            asked = verdict == Verdict.NO ? asked : rule;
        }
        if (asked == null || Rule.all(asked.tests, subject) == Verdict.UNKNOWN) {
            missing.add(asked == null ? ReasonCode.NO_RULE_HELD : ReasonCode.MISSING_LADING);
        }
        return new FillingLimit.Unknown(missing.list());
    }

    private static Reasons missing(@Nullable BigDecimal gravity, @Nullable WaterCapacity capacity) {
        Reasons missing = new Reasons();
        if (gravity == null) {
            missing.add(ReasonCode.MISSING_SPECIFIC_GRAVITY);
        }
        if (capacity == null) {
            missing.add(ReasonCode.MISSING_WATER_CAPACITY);
        }
        return missing;
    }

    /** A capacity that the container cannot have, and a liquid lighter than the one whose pressure was asked about. */
    private static Reasons doubts(Rule[] gates, Subject subject, BigDecimal gravity) {
        Reasons doubts = new Reasons();
        for (Rule rule : gates) {
            Value value = rule.valueFor(subject, subject.stretch);
            if (value == null || !value.isOn(subject.facts, rule.id) || !(value.effect instanceof Effect.Gate gate)
                    || Rule.all(rule.tests, subject) != Verdict.YES) {
                continue;
            }
            if (gate.lightest() != null && gravity.compareTo(gate.lightest()) < 0) {
                doubts.add(value.citing(ReasonCode.PRESSURE_NOT_KNOWN_FOR_GRAVITY));
            }
            for (Test test : gate.requires()) {
                if (test.fact() == Fact.WATER_CAPACITY && test.check().on(subject) == Verdict.NO) {
                    doubts.add(value.citing(gate.otherwise()));
                }
            }
        }
        return doubts;
    }

    /** A gravity between two rows takes the lower density: the table is read down, never up. */
    private static FillingLimit lookUp(Rule rule, Value value, Effect.Densities table, WaterCapacity capacity,
            BigDecimal gravity) {
        BigDecimal read = gravity.setScale(3, RoundingMode.DOWN);
        for (Effect.Densities.Density row : table.rows()) {
            if (read.compareTo(row.from()) >= 0 && read.compareTo(row.to()) <= 0) {
                BigDecimal percent = capacity.toGallons().compareTo(LARGE_GALLONS) > 0
                        ? row.overPercent()
                        : row.percent();
                BigDecimal net = capacity.toPounds().multiply(percent).divide(HUNDRED).setScale(2, RoundingMode.DOWN);
                return new FillingLimit.Limit(percent, net, rule.id, value.citation);
            }
        }
        Reasons reasons = new Reasons();
        reasons.add(value.citing(ReasonCode.SPECIFIC_GRAVITY_OUT_OF_TABLE));
        return new FillingLimit.Unknown(reasons.list());
    }
}
