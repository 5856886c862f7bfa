package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

import org.collarbook.compliance.Citations;
import org.collarbook.dispatch.lists.PullList.Why;
import org.collarbook.holds.HoldReason;
import org.collarbook.regulation.ReasonCode;
import org.springframework.stereotype.Component;

/** Why a container is on a list. */
@Component
class PullReasons {

    private final Citations citations;

    PullReasons(Citations citations) {
        this.citations = citations;
    }

    Why why(PullRow row, Until until, LocalDate day) {
        return switch (row.status()) {
            case CONDEMNED, REJECTED, OVERDUE, USE_UP -> of(row, ReasonCode.valueOf(row.status().name()), day);
            case ON_HOLD -> held(row.holds());
            case UNDETERMINED, OTHER_AUTHORITY, DUE_THIS_MONTH, IN_DATE, NOT_REQUIRED -> ahead(row, until, day);
        };
    }

    /** The rule that is stored gave the clock as it runs now, not the word that it turns into. */
    private Why of(PullRow row, ReasonCode code, LocalDate day) {
        var rule = row.leavesBeforeItIsDue() ? null : row.rule();
        return new Why(code.name(), code.text(), rule, citations.of(rule, day));
    }

    private static Why held(List<HoldReason> holds) {
        var sentences = holds.stream().distinct().map(HoldReason::sentence).collect(Collectors.joining(" "));
        return new Why(ReasonCode.ON_HOLD.name(), (ReasonCode.ON_HOLD.text() + " " + sentences).strip(), null,
                holds.isEmpty() ? null : holds.getFirst().citation());
    }

    /** Nothing is past on the day of the visit, but something will be before the next. */
    private Why ahead(PullRow row, Until until, LocalDate day) {
        var rule = row.leavesBeforeItIsDue() ? null : row.rule();
        var citation = citations.of(rule, day);
        var last = "Its last day is " + row.lastDay();
        var planned = row.planned();
        if (planned != null) {
            return new Why("PLANNED", "Plan " + planned.plan() + (planned.missed() ? " was to bring" : " brings")
                    + " it back on the visit of " + planned.visit() + ". " + last + ".", rule, citation);
        }
        return switch (until) {
            case Until.NextVisit(var next) -> row.leavesBeforeItIsDue()
                    ? leaving(row)
                    : new Why("DUE_BEFORE", last + ", before the next visit on " + next + ".", rule, citation);
            case Until.Asked(var before) -> row.leavesBeforeItIsDue()
                    ? leaving(row)
                    : new Why("DUE_BEFORE", last + ", before " + before + ".", rule, citation);
            case Until.NoLaterVisit _ -> new Why("NO_LATER_VISIT", "No later visit is known. " + last + ".", rule,
                    citation);
            case Until.NoVisitKnown _ -> new Why("NO_VISIT_KNOWN", "No visit is known. " + last + ".", rule, citation);
        };
    }

    private static Why leaving(PullRow row) {
        var code = ReasonCode.valueOf(Objects.requireNonNull(row.leavesAs()).name());
        return new Why(code.name(), "From " + row.leavesOn() + ": " + code.text(), null, null);
    }
}
