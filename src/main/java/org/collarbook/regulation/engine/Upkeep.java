package org.collarbook.regulation.engine;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.Considered.Answer;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.SiteAssessment.Beside;
import org.jspecify.annotations.Nullable;

/** Whether one extinguisher counts, read off its clocks and its rating. */
final class Upkeep {

    /** Without these two nothing is known of it; emptying is asked of some kinds only. */
    private static final Set<Requirement> NEEDED = EnumSet.of(Requirement.EXTINGUISHER_MAINTENANCE,
            Requirement.EXTINGUISHER_PRESSURE_TEST);
    /** What else an assessment tells that is about the extinguisher; the rest speaks of filling and carrying. */
    private static final Set<ReasonCode> TOLD = EnumSet.of(ReasonCode.MISSING_RECORD, ReasonCode.RULE_OFF,
            ReasonCode.CURRENT_TEXT_NOT_READ, ReasonCode.FACT_AFTER_AS_OF);

    private final Reasons reasons = new Reasons();
    private final Assessment assessment;
    private Answer keptUp = Answer.YES;

    private Upkeep(Assessment assessment) {
        this.assessment = assessment;
    }

    /** {@code atLeast} and where it stands are null where no rating is asked for. */
    static Beside of(Assessment assessment, @Nullable Integer rating, @Nullable Integer atLeast,
            @Nullable Citation asked) {
        Upkeep upkeep = new Upkeep(assessment);
        upkeep.read();
        Answer suffices = atLeast == null ? null : upkeep.suffices(rating, atLeast, asked);
        return new Beside(assessment.status(), upkeep.keptUp, suffices, assessment.requirements(),
                upkeep.reasons.list());
    }

    private void read() {
        List<Clock> clocks = assessment.requirements();
        clocks.forEach(this::read);
        assessment.reasons().stream().filter(reason -> TOLD.contains(reason.code())).forEach(reasons::add);
        boolean told = clocks.stream().map(Clock::requirement).toList().containsAll(NEEDED);
        if (!told && keptUp == Answer.YES) {
            keptUp = Answer.UNKNOWN;
            if (reasons.list().isEmpty()) {
                reasons.add(ReasonCode.NO_RULE_HELD);
            }
        }
    }

    private void read(Clock clock) {
        switch (clock.outcome()) {
            case Outcome.Due due -> {
                if (due.overdueOn(assessment.asOf())) {
                    tell(ReasonCode.EXTINGUISHER_OVERDUE, clock);
                    worsen(clock, Answer.NO);
                }
            }
            case Outcome.Condemned _ -> {
                tell(ReasonCode.EXTINGUISHER_OUT_OF_SERVICE, clock);
                worsen(clock, Answer.NO);
            }
            case Outcome.Undetermined undetermined -> {
                undetermined.reasons().forEach(reasons::add);
                worsen(clock, Answer.UNKNOWN);
            }
            case Outcome.OtherAuthority _ -> worsen(clock, Answer.UNKNOWN);
            case Outcome.NotRequired _ -> {
            }
        }
    }

    /** A look that was missed is told; it does not make an extinguisher useless. */
    private void worsen(Clock clock, Answer answer) {
        if (clock.requirement() != Requirement.EXTINGUISHER_INSPECTION) {
            keptUp = worse(keptUp, answer);
        }
    }

    private void tell(ReasonCode code, Clock clock) {
        Citation citation = clock.citation();
        reasons.add(citation == null ? code.reason() : code.citing(citation));
    }

    private Answer suffices(@Nullable Integer rating, int atLeast, @Nullable Citation asked) {
        if (rating != null && rating >= atLeast) {
            return keptUp;
        }
        ReasonCode why = rating == null ? ReasonCode.MISSING_RATING : ReasonCode.RATING_TOO_LOW;
        Reason reason = asked == null ? why.reason() : why.citing(asked);
        reasons.add(reason);
        return worse(keptUp, rating == null ? Answer.UNKNOWN : Answer.NO);
    }

    private static Answer worse(Answer one, Answer other) {
        if (one == Answer.NO || other == Answer.NO) {
            return Answer.NO;
        }
        return one == Answer.YES ? other : one;
    }
}
