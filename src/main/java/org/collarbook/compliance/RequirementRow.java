package org.collarbook.compliance;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;

import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Clock;
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
record RequirementRow(UUID container, Requirement requirement, boolean decisive, Standing standing,
        @Nullable LocalDate due, boolean filledInTime, @Nullable String rule, List<ReasonCode> reasons,
        LocalDate assessedOn) {

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

    private static final Comparator<Clock> WORST_FIRST = Comparator
            .comparing((Clock clock) -> Standing.of(clock.outcome()))
            .thenComparing(RequirementRow::due, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(Clock::requirement);

    /** Every clock of a container on a day, the deciding one with the container's own standing. */
    static List<RequirementRow> of(KnownContainer container, LocalDate today, RuleBook rules) {
        var assessment = rules.assess(container.facts(), today);
        var clocks = assessment.requirements().stream().sorted(WORST_FIRST).toList();
        var reasons = lasting(assessment);
        boolean filledInTime = filledInTime(container, clocks, today, rules);
        var rows = new ArrayList<RequirementRow>(clocks.size());
        for (var clock : clocks) {
            boolean decisive = rows.isEmpty();
            rows.add(new RequirementRow(container.id(), clock.requirement(), decisive,
                    decisive ? Standing.of(assessment.status()) : Standing.of(clock.outcome()), due(clock),
                    filledInTime, clock.ruleId(), reasons, today));
        }
        return rows;
    }

    /**
     * Whether it will be a container to use up once its due month has passed: asked of the rules themselves, on the
     * first day on which it would be overdue.
     */
    private static boolean filledInTime(KnownContainer container, List<Clock> clocks, LocalDate today,
            RuleBook rules) {
        var due = clocks.isEmpty() || container.facts().filledOn() == null ? null : due(clocks.getFirst());
        if (due == null) {
            return false;
        }
        var overdue = due.plusMonths(1);
        return rules.assess(container.facts(), overdue.isBefore(today) ? today : overdue).status() == Status.USE_UP;
    }

    private static @Nullable LocalDate due(Clock clock) {
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
