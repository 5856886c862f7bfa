package org.collarbook.regulation.engine;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.ContainerKind;
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
import org.collarbook.regulation.StandingHold;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/** Gathers what every clock and gate says into the four permissions and the one word. */
final class Permissions {

    private static final Plan.Group NO_GROUP = new Plan.Group(Requirement.SHELL, new Rule[0]);

    private final Subject subject;
    private final Reasons fill = new Reasons();
    private final Reasons carry = new Reasons();
    private final Reasons use = new Reasons();
    private final Reasons told = new Reasons();
    private final List<Clock> clocks = new ArrayList<>(1);
    private Status worst = Status.NOT_REQUIRED;

    Permissions(Subject subject) {
        this.subject = subject;
    }

    void count(Clocks.Reading reading, Plan.Group group) {
        Clock clock = reading.clock();
        if (clock == null) {
            if (reading.value() != null) {
                told.add(reading.value().off);
            }
            return;
        }
        clocks.add(clock);
        Value value = reading.value();
        if (clock.outcome() instanceof Due due && value != null) {
            due(due, value, reading.mark(), group);
        } else {
            otherwise(clock);
        }
        if (value != null && value.unread != null && !subject.asOf.isBefore(value.unreadSince)) {
            told.add(value.unread);
        }
    }

    private void otherwise(Clock clock) {
        switch (clock.outcome()) {
            case NotRequired _,Due _ -> worsen(Status.NOT_REQUIRED);
            case OtherAuthority _ -> other(clock);
            case Undetermined undetermined -> {
                worsen(Status.UNDETERMINED);
                refuseAll(undetermined.reasons());
            }
            case Condemned _ -> {
                worsen(Status.CONDEMNED);
                refuseAll(cited(subject.condemned() ? ReasonCode.CONDEMNED : ReasonCode.SERVICE_LIFE_OVER, clock));
            }
        }
    }

    private void worsen(Status status) {
        worst = status.compareTo(worst) < 0 ? status : worst;
    }

    private static Reason cited(ReasonCode code, Clock clock) {
        return clock.citation() == null ? code.reason() : code.citing(clock.citation());
    }

    private void refuseAll(List<Reason> reasons) {
        fill.addAll(reasons);
        carry.addAll(reasons);
        use.addAll(reasons);
    }

    private void refuseAll(Reason reason) {
        fill.add(reason);
        carry.add(reason);
        use.add(reason);
    }

    private void other(Clock clock) {
        worsen(Status.OTHER_AUTHORITY);
        refuseAll(cited(ReasonCode.OTHER_AUTHORITY, clock));
        Permit permit = subject.facts.permit();
        if (permit != null && permit.expires() != null && permit.expires().isBefore(subject.asOf)) {
            refuseAll(ReasonCode.PERMIT_EXPIRED.reason());
        }
    }

    private void due(Due due, Value value, @Nullable Requalification mark, Plan.Group group) {
        if (mark != null && subject.facts.kind() == ContainerKind.CYLINDER && mark.lacksRin()) {
            fill.add(ReasonCode.RIN_NOT_RECORDED);
        }
        ReasonCode atFill = subject.fillStands() ? Fills.judge(group, subject) : null;
        if (atFill == ReasonCode.FILLED_WHILE_OVERDUE) {
            told.add(atFill);
        }
        if (due.overdueOn(subject.asOf)) {
            overdue(value, atFill);
        } else if (due.inMonthOf(subject.asOf)) {
            worsen(Status.DUE_THIS_MONTH);
            told.add(value.dueThisMonth);
        } else {
            worsen(Status.IN_DATE);
        }
    }

    private void overdue(Value value, @Nullable ReasonCode atFill) {
        fill.add(value.overdue);
        if (atFill == ReasonCode.USE_UP) {
            worsen(Status.USE_UP);
            told.add(value.useUp);
            return;
        }
        worsen(Status.OVERDUE);
        refuseDraw(value.overdue);
        refuseDraw((atFill != null
                ? atFill
                : subject.filledOn == null ? ReasonCode.MISSING_FILL : ReasonCode.EMPTIED_SINCE_FILL).reason());
    }

    private void refuseDraw(Reason reason) {
        carry.add(reason);
        use.add(reason);
    }

    void gate(Rule[] gates, LocalDate day) {
        new Gates(subject, fill, carry, use, told).ask(gates, day);
    }

    void standing() {
        if (subject.condemned()) {
            worsen(Status.CONDEMNED);
            if (!fillRefusedFor(ReasonCode.CONDEMNED)) {
                refuseAll(ReasonCode.CONDEMNED.reason());
            }
        }
        if (subject.rejected()) {
            worsen(Status.REJECTED);
            refuseAll(ReasonCode.REJECTED.reason());
        }
        if (subject.facts.requalifications() == null) {
            // also where no clock needs the history: a rejection or condemnation may stand in it
            refuseAll(ReasonCode.MISSING_REQUALIFICATIONS.reason());
        }
        List<StandingHold> holds = subject.facts.holds();
        if (holds == null) {
            fill.add(ReasonCode.MISSING_HOLDS);
        }
        for (int i = 0; holds != null && i < holds.size(); i++) {
            hold(holds.get(i));
        }
    }

    private boolean fillRefusedFor(ReasonCode code) {
        return fill.list().stream().anyMatch(reason -> reason.code() == code);
    }

    private void hold(StandingHold hold) {
        LocalDate placedOn = hold.placedOn();
        if (placedOn != null && placedOn.isAfter(subject.asOf)) {
            subject.leaveOut();
            return;
        }
        worsen(Status.ON_HOLD);
        refuseAll(new Reason(ReasonCode.ON_HOLD, ReasonCode.ON_HOLD.text() + " " + hold.reason(), null));
    }

    Assessment answer() {
        if (subject.leftOut()) {
            told.add(ReasonCode.FACT_AFTER_AS_OF);
        }
        ContainerKind kind = subject.facts.kind();
        Reasons empty = new Reasons();
        if (kind == null) {
            empty.add(ReasonCode.MISSING_KIND);
        } else {
            moves(kind, empty);
        }
        Permission mayCarry = Permission.unless(carry.list());
        Permission mayUse = use.sameAs(carry) ? mayCarry : Permission.unless(use.list());
        Reasons all = new Reasons();
        all.addAll(fill);
        all.addAll(carry);
        if (mayUse != mayCarry) {
            all.addAll(use);
        }
        all.addAll(told);
        return new Assessment(subject.asOf, worst, Permission.unless(fill.list()), mayCarry,
                Permission.unless(empty.list()), mayUse, clocks, all.list());
    }

    private void moves(ContainerKind kind, Reasons empty) {
        switch (kind) {
            case CYLINDER, CARGO_TANK -> {
                if (!subject.knownEmpty()) {
                    empty.add(ReasonCode.MISSING_EMPTIED);
                }
            }
            case PORTABLE_TANK -> empty.add(ReasonCode.NO_RULE_HELD);
            // 49 CFR 173.315(j) lets an ASME tank travel by its size, how full it is, and the purpose of the move.
            case STATIONARY_TANK -> {
                unmoved(carry);
                unmoved(empty);
            }
        }
    }

    private void unmoved(Reasons reasons) {
        if (subject.facts.waterCapacity() == null) {
            reasons.add(ReasonCode.MISSING_WATER_CAPACITY);
        }
        reasons.add(ReasonCode.MISSING_PERCENT_FULL);
        reasons.add(ReasonCode.MISSING_PURPOSE);
    }

    void undetermined(@Nullable ReasonCode code) {
        if (code != null) {
            Clocks.Reading reading = Clocks.undetermined(Requirement.SHELL, code);
            count(reading, NO_GROUP);
        }
    }
}
