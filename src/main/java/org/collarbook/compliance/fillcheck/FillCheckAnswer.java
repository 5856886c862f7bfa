package org.collarbook.compliance.fillcheck;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;

import org.collarbook.compliance.Declared;
import org.collarbook.platform.Caution;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/**
 * Yes or no with every reason; {@code refusals} are those for which the answer is no. The weights are the most that may
 * be in it, never a promise that it is empty now. {@code stamp} has what was read off, beside what is recorded.
 */
record FillCheckAnswer(LocalDate asOf, boolean mayFill, Status status, @Nullable YearMonth due,
        @Nullable LocalDate lastDay, Candidate container, List<Reason> refusals, List<Reason> reasons,
        @Nullable Most most, @Nullable Gauge gauge, @Nullable LiquidAsked liquid,
        @Nullable List<StampComparison.Line> stamp, @Nullable Declared declared,
        List<Declared> furtherDeclared, String caution) {

    /** What the maximum was worked out for; {@code declaredBy} answers for the gravity of a product. */
    record LiquidAsked(@Nullable String product, BigDecimal specificGravity, @Nullable String declaredBy,
            @Nullable LocalDate declaredOn, @Nullable BigDecimal temperatureF) {

        static @Nullable LiquidAsked from(Liquid liquid) {
            var product = liquid.product();
            var gravity = liquid.specificGravity();
            return gravity == null
                    ? null
                    : product == null
                            ? new LiquidAsked(null, gravity, null, null, liquid.temperatureF())
                            : new LiquidAsked(product.code(), gravity, product.declaredBy(), product.declaredOn(),
                                    liquid.temperatureF());
        }
    }

    static FillCheckAnswer from(Judgement judgement, @Nullable StampComparison stamp) {
        var assessment = judgement.assessment();
        var known = judgement.known();
        var due = assessment.firstDue();
        var most = Most.of(judgement);
        var reasons = new ArrayList<>(judgement.reasons());
        if (most != null && judgement.liquid().temperatureF() != null && most.gallonsAtTemperature() == null) {
            reasons.add(ReasonCode.VOLUME_NOT_CORRECTED.reason());
        }
        var declared = Declared.of(known);
        return new FillCheckAnswer(assessment.asOf(), judgement.mayFill(), assessment.status(), due,
                due == null ? null : due.atEndOfMonth(), Candidate.from(known), judgement.refusals(), reasons, most,
                Gauge.beside(most, known.facts().waterCapacity()), LiquidAsked.from(judgement.liquid()),
                stamp == null ? null : stamp.lines(), declared.isEmpty() ? null : declared.getFirst(),
                declared.stream().skip(1).toList(), Caution.TEXT);
    }
}
