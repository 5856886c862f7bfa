package org.collarbook.compliance.fillcheck;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.RuleBook;
import org.springframework.stereotype.Component;

/** Judges a fill: by the rules, by the limit, and by what the collar bears beside what is recorded. */
@Component
public class FillCheck {

    private final RuleBook rules;

    FillCheck(RuleBook rules) {
        this.rules = rules;
    }

    public Judgement judge(KnownContainer known, Liquid liquid, LocalDate day) {
        return Judgement.of(known, liquid, rules.assess(known.facts(), day),
                rules.fillingLimit(known.facts(), liquid.limiting(), day));
    }

    /**
     * A mark that is not recorded lets a container be filled only where it may be with the mark and without it; whatever
     * else contradicts the register does not, nor does a line that nobody could read.
     */
    Judgement judge(KnownContainer known, Liquid liquid, LocalDate day, StampComparison stamp) {
        var refusals = new ArrayList<Reason>();
        var told = new ArrayList<Reason>();
        for (var line : stamp.lines()) {
            switch (line.says()) {
                case DISPUTED -> refusals.add(new Reason(ReasonCode.MARKS_DISPUTED, line.sentence(),
                        line.citation()));
                case NOT_RECORDED -> told.add(new Reason(ReasonCode.MARKS_NOT_RECORDED, line.sentence(), null));
                case NOT_READ -> refusals.add(new Reason(ReasonCode.MARKS_NOT_READ, line.sentence(), null));
                case AGREES -> {
                }
            }
        }
        for (var mark : stamp.unrecorded()) {
            var also = judge(bearing(known, mark), liquid, day);
            also.refusals().stream().map(because -> new Reason(ReasonCode.MARKS_DISPUTED, "With the mark " + mark
                    + ", which is not recorded: " + because.text(), because.citation())).forEach(refusals::add);
        }
        return judge(known, liquid, day).with(refusals, told);
    }

    private static KnownContainer bearing(KnownContainer known, RequalificationMark mark) {
        var history = known.facts().requalifications();
        var marked = new ArrayList<Requalification>();
        for (var done : history == null ? List.<Requalification>of() : history) {
            // a cylinder is requalified once in a month: what is stamped stands against what is recorded of it
            if (known.facts().kind() != ContainerKind.CYLINDER || done.result() != Result.PASSED
                    || !done.month().equals(mark.month())) {
                marked.add(done);
            }
        }
        marked.addAll(mark.requalifications());
        return known.with(known.facts().toBuilder().requalifications(marked).build());
    }
}
