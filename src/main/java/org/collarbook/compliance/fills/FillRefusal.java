package org.collarbook.compliance.fills;

import java.util.List;

import org.collarbook.compliance.fillcheck.Judgement;
import org.collarbook.compliance.fillcheck.Most;
import org.collarbook.custody.Contents;
import org.collarbook.platform.Caution;
import org.collarbook.platform.Problem;
import org.collarbook.platform.ProblemException;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;

/** A fill that must not be: with all its reasons, and the limit where there is one. */
final class FillRefusal {

    private FillRefusal() {}

    static ProblemException of(Judgement judgement, List<Reason> reasons, @Nullable Contents contents) {
        var most = Most.of(judgement);
        boolean onlyTooMuch = reasons.stream().allMatch(reason -> reason.code() == ReasonCode.OVER_LIMIT);
        var problem = onlyTooMuch && most != null && contents != null
                ? Problem.conflict("OVER_LIMIT",
                        "After this fill " + contents.netLb() + " lb would be in it, and at most "
                                + most.netLb()
                                + " lb may be. Nothing was stored. If it was found so, record it as an observed"
                                + " overfill; it will be held.")
                : Problem.conflict("FILL_REFUSED",
                        "This container must not be filled. Nothing was stored; see reasons. "
                                + Caution.TEXT);
        problem = problem.with("reasons", reasons);
        problem = contents == null ? problem : problem.with("netAfterLb", contents.netLb());
        return (most == null ? problem : problem.with("limit", most)).asException();
    }

    static ProblemException notOverfilled(Contents contents) {
        return Problem.invalid("/observedOverfill", "NOT_OVERFILLED", "true", "absent or false: " + contents.netLb()
                + " lb are within the limit and nothing else refuses the fill").asException();
    }
}
