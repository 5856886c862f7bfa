package org.collarbook.regulation.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Under one rule a later test never falls due earlier: the newest mark of every example that gives a month, or the
 * original test where it bears none, is moved on month by month.
 */
class LaterTestsTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final int YEARS_ON = 10;

    static Stream<RuleExample> dated() {
        return RuleBookLoader.examples(RuleBookLoader.shipped("regulations/")).stream()
                .filter(example -> example.gives().matches("\\d{4}-\\d{2}") && example.facts().schemeDue() == null);
    }

    @ParameterizedTest
    @MethodSource("dated")
    void neverFallDueEarlier(RuleExample example) {
        Requirement requirement = Requirement.valueOf(BOOK.rules().stream()
                .filter(rule -> rule.id().equals(example.ruleId())).map(RuleInfo::topic).findFirst().orElseThrow());
        int governed = walk(example, requirement, example.asOf())
                + walk(example, requirement, example.asOf().plusYears(YEARS_ON));
        assertThat(governed).as("how often %s governed", example.ruleId()).isGreaterThan(1);
    }

    private static int walk(RuleExample example, Requirement requirement, LocalDate day) {
        YearMonth before = null;
        int governed = 0;
        Facts facts = example.facts();
        for (int later = 0; facts != null; later++) {
            YearMonth due = due(facts, requirement, day, example.ruleId());
            if (due != null) {
                governed++;
                assertThat(before == null || !due.isBefore(before))
                        .as("%s on %s, %d months on: %s, then %s", example.ruleId(), day, later, before, due).isTrue();
                before = due;
            }
            facts = movedOn(facts, requirement, day);
        }
        return governed;
    }

    private static @Nullable YearMonth due(Facts facts, Requirement requirement, LocalDate day, String rule) {
        return BOOK.assess(facts, day).requirements().stream()
                .filter(clock -> clock.requirement() == requirement && rule.equals(clock.ruleId()))
                .map(clock -> clock.outcome() instanceof Outcome.Due due ? due.month() : null).findFirst().orElse(null);
    }

    /** With the newest mark of the requirement a month later, until it would lie ahead of the day. */
    private static @Nullable Facts movedOn(Facts facts, Requirement requirement, LocalDate day) {
        List<Requalification> history = new ArrayList<>(facts.requalifications() == null
                ? List.of()
                : facts.requalifications());
        int newest = -1;
        for (int i = 0; i < history.size(); i++) {
            Requalification one = history.get(i);
            boolean moves = one.method() == null ? requirement.isStamped() : requirement.movedBy(one.method());
            newest = moves && (newest < 0 || one.month().isAfter(history.get(newest).month())) ? i : newest;
        }
        YearMonth made = facts.manufactured();
        YearMonth month = newest < 0 ? made : history.get(newest).month();
        if (month == null || !month.isBefore(YearMonth.from(day))) {
            return null;
        }
        if (newest < 0) {
            return facts.toBuilder().manufactured(month.plusMonths(1)).build();
        }
        Requalification one = history.get(newest);
        history.set(newest, new Requalification(month.plusMonths(1), one.method(), one.star(), one.plus(), one.rin(),
                one.rinSeen(), one.result()));
        return facts.toBuilder().requalifications(history).build();
    }
}
