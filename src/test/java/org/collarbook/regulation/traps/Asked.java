package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.rulebook.RuleBookLoader;

/** What the shipped rules say of a container, in short. */
final class Asked {

    static final RuleBook BOOK = RuleBookLoader.standard();

    private Asked() {}

    static Assessment today(FactsBuilder facts) {
        return BOOK.assess(facts.build(), Cases.TODAY);
    }

    static Assessment on(String day, FactsBuilder facts) {
        return BOOK.assess(facts.build(), LocalDate.parse(day));
    }

    /** A cylinder about which all is known and in order, of that stamp and month. */
    static FactsBuilder cylinder(String specification, String made) {
        return Cases.cylinder().specification(Specification.parse(specification)).manufactured(YearMonth.parse(made));
    }

    /** The same elsewhere, with the rules switched on that were told or remembered and not read. */
    static FactsBuilder there(String place, FactsBuilder facts) {
        return facts.jurisdiction(new Jurisdiction(place)).enable(Set.of("SECONDARY", "MEMORY"));
    }

    static FactsBuilder marked(FactsBuilder facts, String month, Method method) {
        return facts.requalifications(List.of(Cases.mark(month, method)));
    }

    /** A mark that tells no method, as most are outside the US. */
    static FactsBuilder marked(FactsBuilder facts, String month) {
        return facts.requalifications(List.of(Requalification.passed(YearMonth.parse(month), null)));
    }

    static Service exclusively(String lading) {
        return new Service(new Lading(lading), true, true);
    }

    static Collar collar(String specification) {
        return Collar.of(Specification.parse(specification), Cases.TODAY);
    }

    /** The month, or the name of the outcome. */
    static String due(Assessment assessment) {
        return due(assessment, Requirement.SHELL);
    }

    static String due(Assessment assessment, Requirement requirement) {
        Clock clock = clock(assessment, requirement);
        return clock.outcome() instanceof Outcome.Due due ? due.month().toString() : clock.outcome().code();
    }

    static Clock clock(Assessment assessment, Requirement requirement) {
        Clock clock = assessment.clock(requirement);
        assertThat(clock).as("%s of %s", requirement, assessment).isNotNull();
        return clock;
    }

    static List<ReasonCode> undetermined(Assessment assessment) {
        Outcome outcome = clock(assessment, Requirement.SHELL).outcome();
        assertThat(outcome).isInstanceOf(Outcome.Undetermined.class);
        return ((Outcome.Undetermined) outcome).reasons().stream().map(Reason::code).toList();
    }

    static List<ReasonCode> whyNotFill(Assessment assessment) {
        assertThat(assessment.mayFill().allowed()).as("%s", assessment).isFalse();
        return assessment.mayFill().reasons().stream().map(Reason::code).toList();
    }

    /** Fill, carry, use: one letter each where it is allowed, a dash where not. */
    static String may(Assessment assessment) {
        return (assessment.mayFill().allowed() ? "F" : "-") + (assessment.mayCarry().allowed() ? "C" : "-")
                + (assessment.mayUse().allowed() ? "U" : "-");
    }

    static Stream<RuleInfo.DatedValue> values() {
        return BOOK.rules().stream().flatMap(rule -> rule.values().stream());
    }

    static Stream<Citation> citations() {
        return values().map(RuleInfo.DatedValue::citation);
    }

    static boolean notHeld(String place, String section, String words) {
        return BOOK.notHeld().stream().anyMatch(one -> one.jurisdiction().code().equals(place)
                && one.section().contains(section) && (one.what() + " " + one.why()).contains(words));
    }
}
