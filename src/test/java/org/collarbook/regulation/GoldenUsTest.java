package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
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
 * The published periods of 49 CFR, row by row: each row's citation names its paragraph, its source says whether the text
 * was found or is from memory. golden/us-permissions.tsv adds what each row permits on its day.
 */
class GoldenUsTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final List<Map<String, String>> ROWS = Tsv.read("/golden/us.tsv");
    private static final Map<String, Map<String, String>> PERMISSIONS = Tsv.read("/golden/us-permissions.tsv").stream()
            .collect(Collectors.toMap(row -> row.get("id"), Function.identity()));

    static Stream<Map<String, String>> held() {
        return ROWS.stream();
    }

    static Stream<Map<String, String>> heldOnlyWithNeeds() {
        return held().filter(row -> row.get("needs").startsWith("basis:"));
    }

    @ParameterizedTest
    @MethodSource("held")
    void givesWhatIsPublished(Map<String, String> row) {
        GoldenFacts golden = new GoldenFacts(row);
        Assessment assessment = BOOK.assess(golden.facts(), LocalDate.parse(row.get("as_of_rule_date")));
        Clock clock = assessment.clock(golden.requirement());
        assertThat(clock).as("%s", assessment).isNotNull();
        assertThat(told(clock.outcome())).as("%s: %s", row.get("id"), assessment).isEqualTo(row.get("expected_due"));
        assertThat(clock.ruleId()).isNotNull();
        assertThat(clock.citation()).isNotNull();
        assertThat(Golden.permissions(row.get("id"), assessment)).isEqualTo(PERMISSIONS.get(row.get("id")));
    }

    private static String told(Outcome outcome) {
        return switch (outcome) {
            case Outcome.Due due -> due.month().toString();
            case Outcome.NotRequired _ -> "NONE";
            case Outcome.OtherAuthority other -> other.authority().equals("Transport Canada") ? "TC-RULES" : "PERMIT";
            case Outcome.Condemned(LocalDate since) -> "CONDEMN-" + since;
            case Outcome.Undetermined undetermined -> undetermined.toString();
        };
    }

    /** Never silently today's text: a rule whose text was not read says that it is off. */
    @ParameterizedTest
    @MethodSource("heldOnlyWithNeeds")
    void withoutItsNeedsIsNotGuessed(Map<String, String> row) {
        GoldenFacts golden = new GoldenFacts(row);
        Facts plain = golden.facts().toBuilder().enable(Set.of()).build();
        Assessment assessment = BOOK.assess(plain, LocalDate.parse(row.get("as_of_rule_date")));
        Clock clock = assessment.clock(golden.requirement());
        if (clock != null) {
            assertThat(clock.outcome()).isInstanceOfSatisfying(Outcome.Undetermined.class, undetermined -> assertThat(
                    undetermined.reasons()).extracting(Reason::code).containsExactly(ReasonCode.RULE_OFF));
            assertThat(assessment.status()).isEqualTo(Status.UNDETERMINED);
        }
        assertThat(assessment.gives(ReasonCode.RULE_OFF)).isTrue();
    }

    @Test
    void everyRowHasItsPermissions() {
        assertThat(PERMISSIONS.keySet()).isEqualTo(held().map(row -> row.get("id")).collect(Collectors.toCollection(
                TreeSet::new)));
    }

}
