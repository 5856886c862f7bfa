package org.collarbook.regulation.engine;

import java.time.LocalDate;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Policy;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;

/** What a rule says from one day until another, with where that stands. */
public final class Value {

    final LocalDate from;
    final @Nullable LocalDate until;
    final @Nullable Policy policy;
    final Effect effect;
    final Citation citation;
    final Reason off;
    /** What a gate says when it refuses. */
    final Reason refusal;
    /** What follows from the date that this value gives. */
    final Reason overdue;
    final Reason dueThisMonth;
    final Reason unrecorded;
    final @Nullable LocalDate unreadSince;
    final @Nullable Reason unread;
    private final boolean onByDefault;
    private final String basis;

    public Value(LocalDate from, @Nullable LocalDate until, @Nullable Policy policy, Effect effect, Citation citation,
            @Nullable LocalDate unreadSince, @Nullable String unread) {
        this.from = from;
        this.until = until;
        this.policy = policy;
        this.effect = effect;
        this.citation = citation;
        this.off = ReasonCode.RULE_OFF.citing(citation);
        this.refusal = effect instanceof Effect.Gate gate ? gate.otherwise().citing(citation) : off;
        this.overdue = ReasonCode.OVERDUE.citing(citation);
        this.dueThisMonth = ReasonCode.DUE_THIS_MONTH.citing(citation);
        this.unrecorded = ReasonCode.MISSING_RECORD.citing(citation);
        this.unreadSince = unreadSince;
        this.unread = unread == null
                ? null
                : new Reason(ReasonCode.CURRENT_TEXT_NOT_READ,
                        ReasonCode.CURRENT_TEXT_NOT_READ.text() + " " + unread, citation);
        this.onByDefault = citation.basis().onByDefault() || policy != null;
        this.basis = citation.basis().name();
    }

    boolean inForceOn(LocalDate day) {
        return !day.isBefore(from) && (until == null || day.isBefore(until));
    }

    boolean isOn(Facts facts, String ruleId) {
        return onByDefault || facts.enable().contains(basis) || facts.enable().contains(ruleId);
    }

    /** That a later text is known and was not read, where it applies on the day. */
    @Nullable
    Reason unreadOn(LocalDate day) {
        return unreadSince != null && !day.isBefore(unreadSince) ? unread : null;
    }
}
