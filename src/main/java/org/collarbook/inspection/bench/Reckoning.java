package org.collarbook.inspection.bench;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

import org.collarbook.inspection.bench.Remark.Code;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;

/** Works out the result from what was measured and found. */
final class Reckoning {

    private final Marked marked;
    private final TestSheet sheet;
    private final boolean lossStands;
    private final Refusals refusals;
    private final List<Remark> remarks = new ArrayList<>();
    private final @Nullable BigDecimal limit;
    private @Nullable BigDecimal tareLoss;
    private Result result = Result.PASSED;

    Reckoning(Marked marked, TestSheet sheet, boolean lossStands, Refusals refusals) {
        this.marked = marked;
        this.sheet = sheet;
        this.lossStands = lossStands;
        this.refusals = refusals;
        this.limit = limit();
        judgeExpansion();
        judgeFindings();
        judgeTare();
        refuseUnexplained();
    }

    List<Remark> remarks() {
        return remarks;
    }

    Judgement judgement() {
        var measured = sheet.expansion();
        var service = sheet.markedPressurePsig();
        var family = marked.dotFamily();
        return new Judgement(result, measured == null ? null : TestArithmetic.permanentPercent(measured), limit,
                sheet.isPressureTest() && service != null && family != null
                        ? MinimumTestPressure.of(family, service)
                        : null,
                tareLoss,
                remarks);
    }

    private void worsen(Result found) {
        result = found.compareTo(result) > 0 ? found : result;
    }

    private void remark(Code code, String text, @Nullable Citation rule) {
        remarks.add(new Remark(code, text, rule));
    }

    /** 12 % for 4E, 10 % for every other DOT specification; else the permit or the other authority gives it. */
    private @Nullable BigDecimal limit() {
        if (sheet.expansion() == null) {
            return null;
        }
        if (marked.dotFamily() == null) {
            if (sheet.limitPercent() == null) {
                refusals.refuse("/limitPercent", "MISSING", null, "the limit of permanent expansion in percent that"
                        + " the permit or standard of a " + marked.specification() + " gives", Sources.CONDEMNATION);
            }
            return sheet.limitPercent();
        }
        if (sheet.limitPercent() != null) {
            refusals.refuse("/limitPercent", "NOT_ALLOWED", sheet.limitPercent(),
                    "no limit: the rule gives that of a DOT specification", Sources.CONDEMNATION);
        }
        return marked.isOf("4E") ? TestArithmetic.MOST_PERMANENT_OF_4E : TestArithmetic.MOST_PERMANENT;
    }

    private void judgeExpansion() {
        var measured = sheet.expansion();
        if (measured == null || limit == null) {
            return;
        }
        boolean over = TestArithmetic.exceeds(measured, limit);
        remark(over ? Code.EXPANSION_OVER_LIMIT : Code.EXPANSION_WITHIN_LIMIT,
                "The permanent expansion of " + measured.permanent().toPlainString() + " cm3 is "
                        + TestArithmetic.permanentPercent(measured).toPlainString() + " % of the total of "
                        + measured.total().toPlainString() + " cm3, rounded up to the hundredth: " + (over
                                ? "more than "
                                : "not more than ")
                        + limit.toPlainString() + " %, decided on the exact ratio.",
                Sources.CONDEMNATION);
        if (over) {
            worsen(Result.CONDEMNED);
        }
    }

    /** Of a tank, a part or a foreign inspection no rule that was read speaks. */
    private @Nullable Citation ofCylinder(Citation rule) {
        return marked.isCylinder() && sheet.method().isOfCylinder() ? rule : null;
    }

    private void judgeFindings() {
        if (sheet.hasDefect()) {
            worsen(Result.REJECTED);
            remark(Code.DEFECT_FOUND, "A defect was found: it is out until it is repaired and passes another test.",
                    ofCylinder(Sources.REJECTION));
        } else if (!sheet.visual().isEmpty()) {
            remark(Code.NO_DEFECT_FOUND, "No defect was found in what was looked at.", ofCylinder(Sources.RECORD));
        }
        if (marked.isOf("4E") && sheet.hasDefectIn(VisualItem.FIRE_DAMAGE)) {
            worsen(Result.CONDEMNED);
            remark(Code.FIRE_EXPOSED, "A DOT-4E that was exposed to fire is removed from service for good.",
                    Sources.ALUMINIUM_IN_FIRE);
        }
        for (var ground : sheet.grounds()) {
            worsen(Result.CONDEMNED);
            remark(Code.CONDEMNING_GROUND, ground.text(), Sources.CONDEMNATION);
        }
    }

    /** A look from outside does not answer for metal that is gone: only a pressure test requalifies such a cylinder. */
    private void judgeTare() {
        var stamped = marked.tareLb();
        var weighed = sheet.tareLb();
        if (lossStands && sheet.method().isOfCylinder() && !sheet.isPressureTest()) {
            worsen(Result.REJECTED);
            remark(Code.TARE_LOSS, "An earlier record has it that 5 % or more of its tare weight is lost, and no"
                    + " pressure test was passed since: this method does not answer for that.", Sources.TARE_LOSS);
        }
        if (weighed == null) {
            return;
        }
        if (stamped == null) {
            remark(Code.TARE_NOT_COMPARED, "No stamped tare weight is recorded to compare with.",
                    marked.isOf4Series() ? Sources.TARE_LOSS : null);
        } else if (weighed.compareTo(stamped.add(stamped)) > 0) {
            refusals.refuse("/tareLb", "OUT_OF_RANGE", weighed.toPlainString(),
                    "at most twice the stamped " + stamped.toPlainString() + " lb");
        } else {
            tareLoss = TestArithmetic.tareLossPercent(stamped, weighed);
            if (marked.isOf4Series() && !marked.isOf("4L")
                    && TestArithmetic.demandsRequalification(stamped, weighed)) {
                judgeTareLoss(tareLoss);
            }
        }
    }

    private void judgeTareLoss(BigDecimal loss) {
        boolean answered = sheet.isPressureTest();
        remark(Code.TARE_LOSS, "It has lost " + loss.toPlainString() + " % of its stamped tare weight, rounded down;"
                + " from 5 % on it is requalified before it is refilled. " + (answered
                        ? "Record the new tare weight."
                        : "This method does not do that: a pressure test is asked for."),
                Sources.TARE_LOSS);
        if (!answered) {
            worsen(Result.REJECTED);
        }
    }

    private void refuseUnexplained() {
        if (sheet.disposition() == null && (result != Result.PASSED || !sheet.repeats().isEmpty())) {
            refusals.refuse("/disposition", "MISSING", null, "the disposition with its reason: the result is " + result
                    + (sheet.repeats().isEmpty() ? "" : " after a repeated test"), ofCylinder(Sources.RECORD));
        }
    }
}
