package org.collarbook.regulation.engine;

import java.time.LocalDate;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Policy;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** What a rule says from one day until another, with where that stands. */
public final class Value {

    final LocalDate from;
    final @Nullable LocalDate until;
    final @Nullable Policy policy;
    final Effect effect;
    final Citation citation;
    final @Nullable LocalDate unreadSince;
    final @Nullable Reason unread;
    /** Each reason with this citation, made once; a race makes two that are equal. */
    private final @Nullable Reason[] cited = new Reason[ReasonCode.values().length];
    /** The requirement whose clock the rule runs, when it runs one. */
    private @Nullable Requirement about;
    private final boolean onByDefault;
    private final String basis;

    public Value(LocalDate from, @Nullable LocalDate until, @Nullable Policy policy, Effect effect, Citation citation,
            @Nullable LocalDate unreadSince, @Nullable Reason unread, boolean on) {
        this.from = from;
        this.until = until;
        this.policy = policy;
        this.effect = effect;
        this.citation = citation;
        this.unreadSince = unreadSince;
        this.unread = unread;
        this.onByDefault = on || policy != null;
        this.basis = citation.basis().name();
    }

    void about(Requirement requirement) {
        about = requirement;
    }

    Reason citing(ReasonCode code) {
        Reason reason = cited[code.ordinal()];
        if (reason == null) {
            reason = new Reason(code, code.text(), about, citation);
            cited[code.ordinal()] = reason;
        }
        return reason;
    }

    boolean inForceOn(LocalDate day) {
        return !day.isBefore(from) && (until == null || day.isBefore(until));
    }

    /** Whether nobody has to ask for it. */
    boolean isOnByDefault() {
        return onByDefault;
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
