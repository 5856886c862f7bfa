package org.collarbook.compliance.fillcheck;

import java.util.ArrayList;
import java.util.List;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.CapacityAgainstTare;
import org.collarbook.regulation.FillingLimit;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;

/** Whether a container may be filled with a liquid on a day, why not, how far, and what else is to be told. */
public record Judgement(KnownContainer known, Liquid liquid, Assessment assessment, FillingLimit limit,
        List<Reason> refusals, List<Reason> reasons) {

    public Judgement {
        refusals = List.copyOf(refusals);
        reasons = List.copyOf(reasons);
    }

    static Judgement of(KnownContainer known, Liquid liquid, Assessment assessment, FillingLimit worked) {
        var tare = known.container().marks().tare();
        var limit = CapacityAgainstTare.judge(worked, known.facts(), tare == null ? null : tare.value().pounds());
        // several clocks may miss the same fact
        var refusals = new ArrayList<>(assessment.mayFill().reasons().stream().distinct().toList());
        // to fill without knowing how far is to guess
        if (limit instanceof FillingLimit.Unknown(var missing)) {
            missing.forEach(reason -> addOnce(refusals, reason));
        }
        if (!liquid.fits(known.facts().service().lading())) {
            refusals.add(ReasonCode.PRODUCT_NOT_OF_SERVICE.reason());
        }
        var reasons = new ArrayList<>(assessment.reasons());
        refusals.forEach(refusal -> addOnce(reasons, refusal));
        if (limit instanceof FillingLimit.Limit && tare == null) {
            reasons.add(ReasonCode.MISSING_TARE.reason());
        }
        if (limit instanceof FillingLimit.Limit && liquid.isOnLighter()) {
            reasons.add(ReasonCode.ON_LIGHTER_LIQUID.reason());
        }
        if (known.placeDisputed()) {
            reasons.add(ReasonCode.PLACE_DISPUTED.reason());
        }
        return new Judgement(known, liquid, assessment, limit, refusals, reasons.stream().distinct().toList());
    }

    private static void addOnce(List<Reason> reasons, Reason reason) {
        if (reasons.stream().noneMatch(told -> told.code() == reason.code())) {
            reasons.add(reason);
        }
    }

    Judgement with(List<Reason> moreRefusals, List<Reason> told) {
        var allRefusals = new ArrayList<>(refusals);
        allRefusals.addAll(moreRefusals);
        var all = new ArrayList<>(reasons);
        all.addAll(moreRefusals);
        all.addAll(told);
        return new Judgement(known, liquid, assessment, limit, allRefusals, all);
    }

    public boolean mayFill() {
        return refusals.isEmpty();
    }

    /** The most by weight; none beside a refusal that stands for good. */
    public FillingLimit.@Nullable Limit most() {
        boolean forGood = refusals.stream().map(Reason::code).anyMatch(code -> code == ReasonCode.NOT_REFILLABLE
                || code == ReasonCode.CONDEMNED || code == ReasonCode.SERVICE_LIFE_OVER);
        return !forGood && limit instanceof FillingLimit.Limit known ? known : null;
    }
}
