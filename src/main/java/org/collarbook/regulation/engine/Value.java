package org.collarbook.regulation.engine;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Policy;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.jspecify.annotations.Nullable;

/** What a rule says from one day until another, with where that stands. */
public final class Value {

    public sealed interface Effect {}

    /** Months from the original test, and from a mark by its method; what is not named is not accepted. */
    public static final class Periods implements Effect {

        final int first;
        private final int[] after = new int[Method.values().length];

        public Periods(int first, Map<Method, Integer> months) {
            this.first = first;
            months.forEach((method, number) -> after[method.ordinal()] = number);
        }

        int after(Method method) {
            return after[method.ordinal()];
        }

        @Override
        public String toString() {
            StringBuilder text = new StringBuilder(first == 0 ? "" : "first " + first + " months");
            for (Method method : Method.values()) {
                if (after(method) > 0) {
                    text.append(text.isEmpty() ? "" : ", ").append("after ").append(method).append(' ')
                            .append(after(method))
                            .append(" months");
                }
            }
            return text.toString();
        }
    }

    /** Never required; or, after the method named, never again. */
    public record NotRequired(@Nullable Method after) implements Effect {}

    public record OtherAuthority(String name) implements Effect {}

    /** The interval recorded with the permit. */
    public record PermitInterval() implements Effect {}

    public record Condemns() implements Effect {}

    public record ServiceLife(int months) implements Effect {}

    /** What must hold before a permission is given, and the reason when it does not. */
    public record Gate(Test[] requires, ReasonCode otherwise) implements Effect {}

    public record Densities(List<Density> rows) implements Effect {

        /** {@code overPercent} is for a water capacity of more than 1,200 gallons. */
        public record Density(BigDecimal from, BigDecimal to, BigDecimal percent, BigDecimal overPercent) {}
    }

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
    final Reason useUp;
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
        this.refusal = effect instanceof Gate gate ? gate.otherwise().citing(citation) : off;
        this.overdue = ReasonCode.OVERDUE.citing(citation);
        this.dueThisMonth = ReasonCode.DUE_THIS_MONTH.citing(citation);
        this.useUp = ReasonCode.USE_UP.citing(citation);
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
}
