package org.collarbook.regulation.engine;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Fittings;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Requirement;
import org.jspecify.annotations.Nullable;

/** The facts as they stood on one day: what is dated later is left out, and told. */
final class Subject {

    final Facts facts;
    final LocalDate asOf;
    final Timeline timeline;
    /** Between which two switches of the rules the day lies. */
    final int stretch;
    final @Nullable YearMonth manufactured;
    final @Nullable LocalDate filledOn;
    final @Nullable LocalDate emptiedOn;
    final @Nullable LocalDate outOfServiceSince;
    final @Nullable Fittings fittings;
    /** The mark that is being judged; null for the period that runs from the original test. */
    @Nullable
    private Requalification mark;
    /** The newest month of a record of the whole container that passed. */
    @Nullable
    private YearMonth passed;
    private boolean leftOut;
    private boolean contradictory;
    private boolean condemned;
    @Nullable
    private LocalDate condemnedSince;
    private boolean rejected;
    private boolean takenAsEmpty;

    Subject(Facts facts, LocalDate asOf, Timeline timeline) {
        this.facts = facts;
        this.asOf = asOf;
        this.timeline = timeline;
        this.stretch = timeline.stretchOf(asOf);
        YearMonth made = facts.manufactured();
        manufactured = made == null || Outcome.isAhead(made, asOf) ? null : made;
        leftOut = made != null && manufactured == null;
        filledOn = known(facts.filledOn());
        emptiedOn = known(facts.emptiedOn());
        outOfServiceSince = known(facts.outOfServiceSince());
        Fittings fitted = facts.fittings();
        fittings = fitted == null || fitted.since() != null && known(fitted.since()) == null ? null : fitted;
        judgeHistory(facts.requalifications());
    }

    private @Nullable LocalDate known(@Nullable LocalDate day) {
        if (day != null && day.isAfter(asOf)) {
            leftOut = true;
            return null;
        }
        return day;
    }

    private void judgeHistory(@Nullable List<Requalification> history) {
        Rejections rejections = new Rejections(facts);
        for (int i = 0; history != null && i < history.size(); i++) {
            Requalification one = history.get(i);
            YearMonth month = one.month();
            if (Outcome.isAhead(month, asOf)) {
                leftOut = true;
                continue;
            }
            contradictory |= manufactured != null && month.isBefore(manufactured)
                    && (one.method() == null || one.method().isOfContainer());
            rejections.count(one, asOf);
            switch (one.result()) {
                case PASSED -> passed = belongs(Requirement.SHELL, one) ? Rejections.later(passed, month) : passed;
                case CONDEMNED -> condemn(month.atDay(1));
                case REJECTED -> {
                }
            }
        }
        Condition condition = facts.condition();
        LocalDate rejectedOn = condition == null ? null : known(condition.rejectedOn());
        LocalDate condemnedOn = condition == null ? null : known(condition.condemnedOn());
        if (condemnedOn != null) {
            condemn(condemnedOn);
        }
        rejected = rejections.stand(rejectedOn, passed);
    }

    /** A stamp that tells no method may be of any test that is stamped. */
    static boolean belongs(Requirement requirement, Requalification one) {
        Method method = one.method();
        return method == null ? requirement.isStamped() : requirement.movedBy(method);
    }

    private void condemn(LocalDate since) {
        condemnedSince = condemnedSince == null || since.isBefore(condemnedSince) ? since : condemnedSince;
        condemned = true;
    }

    boolean counts(Requalification one, LocalDate day) {
        return one.result() == Result.PASSED && !Outcome.isAhead(one.month(), day);
    }

    /** Emptied and not filled since; a fill on the same day may have come after. */
    boolean knownEmpty() {
        return emptiedOn != null && (filledOn == null || emptiedOn.isAfter(filledOn));
    }

    /** A fill that may still be inside; emptying on the day of the fill may have come after. */
    boolean fillStands() {
        return filledOn != null && (emptiedOn == null || emptiedOn.isBefore(filledOn));
    }

    /** Whether one of these tests was passed in that month or later. */
    boolean testedSince(YearMonth month, Set<Method> tests) {
        List<Requalification> history = facts.requalifications();
        for (int i = 0; history != null && i < history.size(); i++) {
            Requalification one = history.get(i);
            if (counts(one, asOf) && one.method() != null && tests.contains(one.method())
                    && !one.month().isBefore(month)) {
                return true;
            }
        }
        return false;
    }

    /** While it is asked whether it may travel empty. */
    void takenAsEmpty(boolean taken) {
        takenAsEmpty = taken;
    }

    @Nullable
    BigDecimal percentFull() {
        return takenAsEmpty ? BigDecimal.ZERO : facts.move() == null ? null : facts.move().percentFull();
    }

    @Nullable
    Requalification mark() {
        return mark;
    }

    void judging(@Nullable Requalification one) {
        mark = one;
    }

    @Nullable
    YearMonth newestPassed() {
        return passed;
    }

    boolean leftOut() {
        return leftOut;
    }

    void leaveOut() {
        leftOut = true;
    }

    boolean contradictory() {
        return contradictory;
    }

    boolean condemned() {
        return condemned;
    }

    @Nullable
    LocalDate condemnedSince() {
        return condemnedSince;
    }

    boolean rejected() {
        return rejected;
    }
}
