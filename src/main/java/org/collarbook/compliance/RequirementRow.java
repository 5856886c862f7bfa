package org.collarbook.compliance;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/**
 * One clock as it is stored: what an assessment said, less everything that changes with the date alone. The status
 * word on any later day follows from it by the SQL function {@code container_status}.
 */
record RequirementRow(UUID container, Requirement requirement, @Nullable Jurisdiction jurisdiction, boolean decisive,
        Standing standing,
        @Nullable LocalDate due, boolean filledInTime, @Nullable Change change, @Nullable String rule,
        List<ReasonCode> reasons, LocalDate assessedOn) {

    /** The worst first, as in {@link Status}. */
    enum Standing {
        CONDEMNED,
        REJECTED,
        ON_HOLD,
        UNDETERMINED,
        OTHER_AUTHORITY,
        DUE,
        NOT_REQUIRED;

        static Standing of(Status status) {
            return switch (status) {
                case CONDEMNED -> CONDEMNED;
                case REJECTED -> REJECTED;
                case ON_HOLD -> ON_HOLD;
                case UNDETERMINED -> UNDETERMINED;
                case OTHER_AUTHORITY -> OTHER_AUTHORITY;
                case OVERDUE, USE_UP, DUE_THIS_MONTH, IN_DATE -> DUE;
                case NOT_REQUIRED -> NOT_REQUIRED;
            };
        }

        static Standing of(Outcome outcome) {
            return switch (outcome) {
                case Outcome.Condemned _ -> CONDEMNED;
                case Outcome.Undetermined _ -> UNDETERMINED;
                case Outcome.OtherAuthority _ -> OTHER_AUTHORITY;
                case Outcome.Due _ -> DUE;
                case Outcome.NotRequired _ -> NOT_REQUIRED;
            };
        }
    }

    /** The word that its status turns into by date alone, and the first day of it. */
    record Change(LocalDate on, Status to) {}

    private static final Comparator<Clock> WORST_FIRST = Comparator
            .comparing((Clock clock) -> Standing.of(clock.outcome()))
            .thenComparing(RequirementRow::due, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(Clock::requirement).thenComparing(clock -> String.valueOf(clock.jurisdiction()));

    /** Every clock of a container on a day, the deciding one with the container's own standing. */
    static List<RequirementRow> of(KnownContainer container, LocalDate today, RuleBook rules) {
        var facts = container.facts();
        var assessment = rules.assess(facts, today);
        var outlook = new Outlook(rules, facts, assessment);
        var rows = on(container.id(), assessment);
        rows.replaceAll(row -> outlook.isUsedUp(row) ? row.usedUp() : row);
        return outlook.over(rows);
    }

    /** The same of that one day alone, whose words {@link #toldBy} tells. */
    static List<RequirementRow> on(UUID container, Assessment assessment) {
        var reasons = lasting(assessment);
        var rows = new ArrayList<RequirementRow>(2);
        for (var clock : assessment.requirements().stream().sorted(WORST_FIRST).toList()) {
            boolean decisive = rows.isEmpty();
            var standing = decisive ? Standing.of(assessment.status()) : Standing.of(clock.outcome());
            rows.add(new RequirementRow(container, clock.requirement(), clock.jurisdiction(), decisive, standing,
                    due(clock), false, null, clock.ruleId(), reasons, assessment.asOf()));
        }
        return rows;
    }

    private RequirementRow usedUp() {
        return new RequirementRow(container, requirement, jurisdiction, decisive, standing, due, true, change, rule,
                reasons, assessedOn);
    }

    /** The same as the SQL function {@code container_status}. */
    private Status wordOn(LocalDate day) {
        if (standing != Standing.DUE || due == null) {
            return Status.valueOf(standing.name());
        }
        var month = new Outcome.Due(YearMonth.from(due));
        return month.overdueOn(day)
                ? filledInTime ? Status.USE_UP : Status.OVERDUE
                : month.inMonthOf(day) ? Status.DUE_THIS_MONTH : Status.IN_DATE;
    }

    /**
     * What an assessment says of it: of the deciding one, the container's status. A province's rule may take the place of
     * its country's; a clock that runs no more is not required.
     */
    Status toldBy(Assessment told) {
        if (decisive) {
            return told.status();
        }
        for (var clock : told.requirements()) {
            if (clock.requirement() == requirement
                    && Objects.equals(country(clock.jurisdiction()), country(jurisdiction))) {
                return clock.status();
            }
        }
        return Status.NOT_REQUIRED;
    }

    RequirementRow changedBy(Assessment told) {
        if (change != null || wordOn(told.asOf()) == toldBy(told)) {
            return this;
        }
        return new RequirementRow(container, requirement, jurisdiction, decisive, standing, due, filledInTime,
                new Change(told.asOf(), toldBy(told)), rule, reasons, assessedOn);
    }

    private static @Nullable Jurisdiction country(@Nullable Jurisdiction of) {
        return of == null ? null : of.country();
    }

    static @Nullable LocalDate due(Clock clock) {
        return clock.outcome() instanceof Outcome.Due(var month) ? month.atDay(1) : null;
    }

    private static List<ReasonCode> lasting(Assessment assessment) {
        return assessment.reasons().stream().map(reason -> reason.code()).filter(RequirementRow::isLasting).distinct()
                .toList();
    }

    private static boolean isLasting(ReasonCode code) {
        return switch (code) {
            case OVERDUE, DUE_THIS_MONTH, USE_UP, MISSING_FILL, FACT_AFTER_AS_OF -> false;
            default -> true;
        };
    }
}
