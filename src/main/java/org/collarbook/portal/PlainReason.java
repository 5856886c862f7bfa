package org.collarbook.portal;

import static java.util.Map.entry;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.StandingHold;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/**
 * Why an answer is what it is, for somebody who is not of the trade. The sentence is ours, never what the staff wrote
 * beside a record.
 */
public record PlainReason(ReasonCode code, String text, @Nullable Citation citation) {

    private static final String STOPPED = "OUT_OF_SERVICE";

    private static final Set<ReasonCode> KEEPING_OUT = EnumSet.of(ReasonCode.CONDEMNED, ReasonCode.SERVICE_LIFE_OVER,
            ReasonCode.REJECTED, ReasonCode.ON_HOLD);

    /** Where the sentence for the staff would not be understood, or would say more than is the customer's. */
    private static final Map<ReasonCode, String> FOR_CUSTOMERS = Map.ofEntries(
            entry(ReasonCode.CONDEMNED, "It is condemned: it must never be filled or used again."),
            entry(ReasonCode.REJECTED, "It failed an inspection: it must be repaired and pass one before it is used."),
            entry(ReasonCode.OVERDUE,
                    "Its inspection date has passed: nothing may be put in, not even to top it off, until it passes one."),
            entry(ReasonCode.DUE_THIS_MONTH, "Its inspection is due by the last day of this month; until then it is in"
                    + " date."),
            entry(ReasonCode.USE_UP, "It was filled before its inspection date passed: what is in it may be used up,"
                    + " but it is not filled again before it is inspected."),
            entry(ReasonCode.FILLED_WHILE_OVERDUE, "It was last filled after its inspection date had passed."),
            entry(ReasonCode.RIN_NOT_RECORDED,
                    "The number of the facility that inspected it last (RIN) is not recorded."),
            entry(ReasonCode.METHOD_NOT_ACCEPTED,
                    "The kind of inspection recorded last is not known to count for this container and its contents."),
            entry(ReasonCode.MISSING_METHOD, "Its latest inspection is recorded without the kind of inspection."),
            entry(ReasonCode.MISSING_REQUALIFICATIONS, "It is not known when it was inspected before."),
            entry(ReasonCode.MISSING_HOLDS, "It is not known whether something keeps it out of service."),
            entry(ReasonCode.MISSING_LADING, "It is not known what gas it holds."),
            entry(ReasonCode.MISSING_EXCLUSIVE, "It is not known whether it has held this gas alone."),
            entry(ReasonCode.MISSING_CORROSION_FREE,
                    "It is not known whether the gas in it is free of parts that corrode."),
            entry(ReasonCode.MISSING_OWNER_CONSENT, "It is not recorded that its owner agrees to its being filled."),
            entry(ReasonCode.OWNER_CONSENT_REFUSED, "Its owner has not agreed to its being filled."),
            entry(ReasonCode.CONTRADICTORY_FACTS,
                    "What is recorded of it contradicts itself and is to be looked into."),
            entry(ReasonCode.CAPACITY_NOT_OF_SPECIFICATION,
                    "The size recorded for it cannot be right and is to be looked into."),
            entry(ReasonCode.EXTENSION_IGNORED, "A longer period is recorded for it than it can have; it is not used."),
            entry(ReasonCode.RULE_OFF, "A further rule may apply that is not in use here: ask your supplier."),
            entry(ReasonCode.CURRENT_TEXT_NOT_READ,
                    "The regulation was amended later; what the amendment says is not taken into account."),
            entry(ReasonCode.NO_RULE_HELD, "The rules that apply to it are not held here: ask your supplier."),
            entry(ReasonCode.SPECIFICATION_NOT_AUTHORISED, "This type of container may not hold this gas."));

    public static List<PlainReason> of(Assessment assessment, @Nullable List<StandingHold> holds) {
        var reasons = new ArrayList<PlainReason>();
        boolean held = false;
        for (var reason : assessment.reasons()) {
            if (reason.code() != ReasonCode.ON_HOLD) {
                reasons.add(of(reason));
            } else if (!held && holds != null) {
                held = true;
                holds.stream().filter(hold -> stands(hold, assessment.asOf())).map(PlainReason::of)
                        .forEach(reasons::add);
            }
        }
        return List.copyOf(reasons);
    }

    private static PlainReason of(Reason reason) {
        return new PlainReason(reason.code(), FOR_CUSTOMERS.getOrDefault(reason.code(), reason.code().text()),
                reason.citation());
    }

    private static boolean stands(StandingHold hold, LocalDate day) {
        return hold.placedOn() == null || !hold.placedOn().isAfter(day);
    }

    /** Why a tank was stopped is in the words of whoever stopped it, and stays with the staff. */
    private static PlainReason of(StandingHold hold) {
        var sentence = hold.reason().equals(STOPPED) || hold.text() == null
                ? "It was taken out of service" + (hold.placedOn() == null ? "." : " on " + hold.placedOn() + ".")
                : hold.text();
        return new PlainReason(ReasonCode.ON_HOLD, sentence, hold.citation());
    }

    boolean keepsOut() {
        return KEEPING_OUT.contains(code);
    }

    /** What the status word means. */
    static String meaning(Status status) {
        return switch (status) {
            case CONDEMNED -> "Condemned: never to be filled or used again.";
            case REJECTED -> "Failed an inspection: not to be used until it is repaired and has passed one.";
            case ON_HOLD -> "Kept out of service: not to be filled or used until that is lifted.";
            case UNDETERMINED -> "Not known, since something is missing: treat it as not to be filled.";
            case OTHER_AUTHORITY -> "Under a permit or the rules of another authority: ask your supplier.";
            case OVERDUE -> "Its inspection is overdue: not to be filled until it has passed one.";
            case USE_UP -> "Its inspection is overdue; filled in time, so what is in it may be used up.";
            case DUE_THIS_MONTH -> "Its inspection is due by the last day of this month.";
            case IN_DATE -> "Its inspection is not due before next month.";
            case NOT_REQUIRED -> "No periodic inspection is asked of it.";
        };
    }
}
