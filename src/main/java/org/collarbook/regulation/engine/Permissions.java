package org.collarbook.regulation.engine;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Outcome.Condemned;
import org.collarbook.regulation.Outcome.Due;
import org.collarbook.regulation.Outcome.NotRequired;
import org.collarbook.regulation.Outcome.OtherAuthority;
import org.collarbook.regulation.Outcome.Undetermined;
import org.collarbook.regulation.Permission;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Status;
import org.collarbook.regulation.engine.Part.Allows;
import org.jspecify.annotations.Nullable;

/** Gathers what every clock says into the four permissions and the one word. */
final class Permissions {

    private static final Set<Fact> NO_FACTS = Set.of();

    final Subject subject;
    final Refusals refusals = new Refusals();
    private List<Clock> clocks = List.of();
    private Status worst = Status.NOT_REQUIRED;

    Permissions(Subject subject) {
        this.subject = subject;
    }

    /** Whether the clock runs. */
    boolean count(Reading reading, Plan.Group group, Plan plan, @Nullable Jurisdiction where) {
        Outcome outcome = reading.outcome();
        if (outcome == null) {
            refusals.tell(reading.told());
            return false;
        }
        Rule rule = reading.rule();
        Value value = reading.value();
        Status status = outcome instanceof Due due && value != null && rule != null
                ? due(due, reading, group, plan)
                : otherwise(outcome, reading, plan);
        worsen(status);
        add(new Clock(rule == null ? where : rule.head.jurisdiction(), reading.requirement(), outcome, status,
                rule == null ? null : rule.id, value == null ? null : value.citation, used(rule, reading.mark())));
        if (value != null) {
            refusals.tell(value.unreadOn(subject.asOf));
            notes(plan, reading);
        }
        return true;
    }

    /** Most containers have one clock. */
    private void add(Clock clock) {
        if (clocks.isEmpty()) {
            clocks = List.of(clock);
            return;
        }
        List<Clock> more = new ArrayList<>(clocks);
        more.add(clock);
        clocks = more;
    }

    private static Set<Fact> used(@Nullable Rule rule, @Nullable Requalification mark) {
        return rule == null ? NO_FACTS : mark == null ? rule.factsUsedAtFirst : rule.factsUsed;
    }

    void undetermined(ReasonCode code, Plan plan, @Nullable Jurisdiction where) {
        count(Reading.undetermined(Requirement.SHELL, code), Plan.NO_GROUP, plan, where);
    }

    private void notes(Plan plan, Reading reading) {
        for (Rule rule : plan.notes) {
            subject.judging(reading.mark());
            Value value = rule.valueFor(subject, subject.stretch);
            if (value != null && rule.part instanceof Part.Notes(ReasonCode code, Requirement about)
                    && about == reading.requirement() && value.isOn(subject.facts, rule.id)
                    && Rule.all(rule.tests, subject) == Verdict.YES) {
                refusals.tell(value.citing(code));
            }
        }
    }

    private Status otherwise(Outcome outcome, Reading reading, Plan plan) {
        int bars = bars(reading.rule());
        Value value = reading.value();
        Citation citation = value == null ? null : value.citation;
        return switch (outcome) {
            case NotRequired _,Due _ -> Status.NOT_REQUIRED;
            case OtherAuthority _ -> other(citation, bars, plan);
            case Undetermined undetermined -> {
                refusals.refuse(bars, undetermined.reasons());
                yield Status.UNDETERMINED;
            }
            case Condemned _ -> {
                boolean life = value != null && value.effect instanceof Effect.ServiceLife;
                refusals.refuse(Allows.ALL,
                        cited(life ? ReasonCode.SERVICE_LIFE_OVER : ReasonCode.CONDEMNED, citation));
                yield Status.CONDEMNED;
            }
        };
    }

    private static int bars(@Nullable Rule rule) {
        return rule != null && rule.part instanceof Part.Sets sets ? sets.bars() : Allows.ALL;
    }

    void worsen(Status status) {
        worst = status.compareTo(worst) < 0 ? status : worst;
    }

    private static Reason cited(ReasonCode code, @Nullable Citation citation) {
        return citation == null ? code.reason() : code.citing(citation);
    }

    private Status other(@Nullable Citation citation, int bars, Plan plan) {
        refusals.refuse(bars, cited(ReasonCode.OTHER_AUTHORITY, citation));
        Permit permit = subject.facts.permit();
        if (permit != null && permit.expires() != null && permit.expires().isBefore(subject.asOf)) {
            refusals.refuse(bars, plan.cited(ReasonCode.PERMIT_EXPIRED, subject));
        }
        return Status.OTHER_AUTHORITY;
    }

    private Status due(Due due, Reading reading, Plan.Group group, Plan plan) {
        Requalification mark = reading.mark();
        if (mark != null && subject.facts.kind() == ContainerKind.CYLINDER && mark.lacksRin()
                && group.requirement().isOfTheWhole() && plan.cites(ReasonCode.RIN_NOT_RECORDED)) {
            refusals.fill.add(plan.cited(ReasonCode.RIN_NOT_RECORDED, subject));
        }
        ReasonCode atFill = subject.fillStands() ? Fills.judge(group, subject) : null;
        if (atFill == ReasonCode.FILLED_WHILE_OVERDUE) {
            refusals.tell(plan.cited(atFill, subject));
        }
        if (due.overdueOn(subject.asOf)) {
            return overdue(reading, atFill, plan);
        }
        Value value = reading.value();
        if (due.inMonthOf(subject.asOf)) {
            refusals.tell(value == null ? null : value.citing(ReasonCode.DUE_THIS_MONTH));
            return Status.DUE_THIS_MONTH;
        }
        return Status.IN_DATE;
    }

    private Status overdue(Reading reading, @Nullable ReasonCode atFill, Plan plan) {
        int bars = bars(reading.rule());
        Reliefs reliefs = new Reliefs(subject, plan, refusals);
        int usedUp = atFill == ReasonCode.USE_UP ? reliefs.ofFilledInTime() : 0;
        int left = bars & ~usedUp;
        left &= ~((left & Allows.CARRY.bit) != 0 && reliefs.ofOverdue(Allows.CARRY) ? Allows.CARRY.bit : 0);
        left &= ~((left & Allows.USE.bit) != 0 && reliefs.ofOverdue(Allows.USE) ? Allows.USE.bit : 0);
        Value value = reading.value();
        refusals.refuse(left, value == null ? ReasonCode.OVERDUE.reason() : value.citing(ReasonCode.OVERDUE));
        int drawn = left & ~Allows.FILL.bit;
        if (drawn != 0 && plan.relieves(Part.Relief.FILLED_IN_TIME)) {
            refusals.refuse(drawn, plan.cited(why(atFill), subject));
        }
        return usedUp == 0 ? Status.OVERDUE : Status.USE_UP;
    }

    private ReasonCode why(@Nullable ReasonCode atFill) {
        return atFill != null
                ? atFill
                : subject.filledOn == null ? ReasonCode.MISSING_FILL : ReasonCode.EMPTIED_SINCE_FILL;
    }

    Assessment answer(Plan plan) {
        if (subject.leftOut()) {
            refusals.tell(ReasonCode.FACT_AFTER_AS_OF.reason());
        }
        Permission empty = Moves.judge(subject, plan, refusals);
        Permission mayCarry = Permission.unless(refusals.carry.list());
        Permission mayUse = refusals.use.sameAs(refusals.carry) ? mayCarry : Permission.unless(refusals.use.list());
        return new Assessment(subject.asOf, worst, Permission.unless(refusals.fill.list()), mayCarry, empty, mayUse,
                clocks, refusals.all(mayUse != mayCarry));
    }
}
