package org.collarbook.compliance.fills;

import java.util.ArrayList;
import java.util.List;

import org.collarbook.compliance.fillcheck.Judgement;
import org.collarbook.regulation.FillingLimit;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;

/** Why a fill with so much in it afterwards is not allowed. */
final class Refusals {

    private Refusals() {}

    static List<Reason> of(Judgement judgement, Measured measured) {
        var refusals = new ArrayList<>(judgement.refusals());
        switch (measured) {
            case Measured.Known(var contents) -> {
                if (judgement.limit() instanceof FillingLimit.Limit limit && contents.isMoreThan(limit.maxNet())) {
                    refusals.add(ReasonCode.OVER_LIMIT.citing(limit.citation()));
                }
            }
            case Measured.Unknown(var because) -> because.stream()
                    .filter(code -> refusals.stream().noneMatch(told -> told.code() == code))
                    .map(ReasonCode::reason).forEach(refusals::add);
        }
        return refusals;
    }
}
