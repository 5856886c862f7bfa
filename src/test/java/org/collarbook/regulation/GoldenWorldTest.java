package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The rules of other places, row by row: each row's citation names its text, its grade says whether the text was read
 * ({@code text}), told by somebody ({@code secondary}) or is remembered ({@code memory}); only the first are on without
 * being asked for. golden/world-permissions.tsv adds what each row permits on its day.
 */
class GoldenWorldTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final List<Map<String, String>> ROWS = Tsv.read("/golden/world.tsv");
    private static final Map<String, Map<String, String>> PERMISSIONS = Tsv.read("/golden/world-permissions.tsv")
            .stream().collect(Collectors.toMap(row -> row.get("id"), Function.identity()));

    static Stream<Map<String, String>> rows() {
        return ROWS.stream();
    }

    static Stream<Map<String, String>> notOfText() {
        return ROWS.stream().filter(row -> !row.get("grade").equals("text"));
    }

    @ParameterizedTest
    @MethodSource("rows")
    void givesWhatIsPublished(Map<String, String> row) {
        WorldFacts world = new WorldFacts(row);
        Assessment assessment = BOOK.assess(world.facts(), world.asOf());
        Clock clock = assessment.clock(world.requirement());
        assertThat(clock).as("%s", assessment).isNotNull();
        assertThat(told(clock.outcome())).as("%s: %s", row.get("id"), assessment).isEqualTo(row.get("expected_due"));
        assertThat(Golden.permissions(row.get("id"), assessment)).isEqualTo(PERMISSIONS.get(row.get("id")));
    }

    private static String told(Outcome outcome) {
        return switch (outcome) {
            case Outcome.Due due -> due.month().toString();
            case Outcome.NotRequired _ -> "NO_DUE";
            case Outcome.OtherAuthority other -> other.authority();
            case Outcome.Condemned condemned -> condemned.toString();
            case Outcome.Undetermined(List<Reason> reasons) -> reasons.stream().anyMatch(
                    reason -> reason.code() == ReasonCode.READINGS_DIFFER
                            || reason.code() == ReasonCode.MISSING_MANUFACTURED || reason.code() == ReasonCode.RULE_OFF)
                                    ? "AMBIGUOUS"
                                    : "UNKNOWN";
        };
    }

    /** What is not of a text says nothing until it is asked for by name, and is told to be switched off. */
    @ParameterizedTest
    @MethodSource("notOfText")
    void saysNothingUnasked(Map<String, String> row) {
        WorldFacts world = new WorldFacts(row);
        Assessment assessment = BOOK.assess(world.facts().toBuilder().enable(Set.of()).build(), world.asOf());
        Clock clock = assessment.clock(world.requirement());
        if (clock != null && !(clock.outcome() instanceof Outcome.Undetermined)) {
            // a text decides the clock before the rule that was not read, and decides it no later
            assertThat(clock.citation()).isNotNull();
            assertThat(clock.citation().basis().onByDefault()).isTrue();
            assertThat(told(clock.outcome())).as("%s", row.get("id")).isLessThanOrEqualTo(row.get("expected_due"));
        }
        assertThat(assessment.mayFill().allowed()).isFalse();
        assertThat(assessment.gives(ReasonCode.RULE_OFF) || clock != null).as("%s", assessment).isTrue();
    }

    /** The certificate of CA-11 is over on the day after it expires. */
    @Test
    void aCertificateThatIsOverDecidesNothing() {
        Map<String, String> row = ROWS.stream().filter(one -> one.get("id").equals("CA-11")).findFirst().orElseThrow();
        Assessment assessment = BOOK.assess(new WorldFacts(row).facts(), Cases.TODAY);
        assertThat(assessment.clock(Requirement.SHELL)).isNotNull().extracting(Clock::outcome)
                .isInstanceOf(Outcome.Undetermined.class);
    }

    @Test
    void everyRowHasItsPermissions() {
        assertThat(PERMISSIONS.keySet()).isEqualTo(
                ROWS.stream().map(row -> row.get("id")).collect(Collectors.toCollection(TreeSet::new)));
    }
}
