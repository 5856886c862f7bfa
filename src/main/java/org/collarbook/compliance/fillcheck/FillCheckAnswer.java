package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.platform.Caution;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.FillingLimit;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/**
 * Yes or no with every reason; {@code refusals} are those for which the answer is no. The weights are the most that may
 * be in it, never a promise that it is empty now.
 */
record FillCheckAnswer(LocalDate asOf, boolean mayFill, Status status, @Nullable YearMonth due,
        @Nullable LocalDate lastDay, Candidate container, List<Reason> refusals, List<Reason> reasons,
        @Nullable Most most, @Nullable Declared declared, String caution) {

    /** The most that may be in it: net by water capacity and filling density, gross on the scale with the tare. */
    record Most(BigDecimal percentOfWaterCapacity, BigDecimal netLb, @Nullable BigDecimal grossLb,
            BigDecimal gallonsAt60F, Citation citation) {}

    /** The facts of this answer that rest on a person's word. */
    record Declared(String by, LocalDate on, List<String> facts) {}

    static FillCheckAnswer from(KnownContainer known, Assessment assessment, FillingLimit limit,
            @Nullable BigDecimal specificGravity) {
        var due = assessment.firstDue();
        var reasons = new ArrayList<>(assessment.reasons());
        var tare = known.container().marks().tare();
        if (limit instanceof FillingLimit.Unknown(var unknown)) {
            reasons.addAll(unknown);
        } else if (tare == null) {
            reasons.add(ReasonCode.MISSING_TARE.reason());
        }
        var refusals = refusals(assessment, limit);
        return new FillCheckAnswer(assessment.asOf(), refusals.isEmpty(), assessment.status(), due,
                due == null ? null : due.atEndOfMonth(), Candidate.from(known), refusals,
                reasons.stream().distinct().toList(),
                most(limit, tare == null ? null : tare.value().pounds(), specificGravity), declared(known),
                Caution.TEXT);
    }

    /** A liquid for which the table has no row may not go in at any weight. */
    private static List<Reason> refusals(Assessment assessment, FillingLimit limit) {
        var refusals = new ArrayList<>(assessment.mayFill().reasons());
        if (limit instanceof FillingLimit.Unknown(var unknown)) {
            unknown.stream().filter(reason -> reason.code() == ReasonCode.SPECIFIC_GRAVITY_OUT_OF_TABLE)
                    .forEach(refusals::add);
        }
        return List.copyOf(refusals);
    }

    private static @Nullable Most most(FillingLimit limit, @Nullable BigDecimal tare,
            @Nullable BigDecimal specificGravity) {
        return limit instanceof FillingLimit.Limit known && specificGravity != null
                ? new Most(known.percent(), known.maxNet(), known.maxGross(tare),
                        known.gallonsAt60F(specificGravity).setScale(1, RoundingMode.DOWN), known.citation())
                : null;
    }

    private static @Nullable Declared declared(KnownContainer known) {
        var facts = known.container().declared();
        var declarer = known.declarer();
        return facts.isEmpty() || declarer == null
                ? null
                : new Declared(declarer.name(), declarer.declaredOn(),
                        facts.stream().sorted().map(fact -> fact.word()).toList());
    }
}
