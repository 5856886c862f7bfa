package org.collarbook.regulation.rulebook;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.GoldenRow;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.RuleInfo;
import org.junit.jupiter.api.Test;

/** Which published date tries which rule; a rule that none tries is tried by its own example at least. */
class GoldenCoverageTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final Set<String> CLOCKS = Arrays.stream(Requirement.values()).map(Enum::name)
            .collect(Collectors.toSet());
    private static final Map<String, Set<String>> ROWS = rowsByRule();
    private static final Set<String> TRIED_BY_EXAMPLE = triedByExample();

    private static Map<String, Set<String>> rowsByRule() {
        Map<String, Set<String>> rows = new TreeMap<>();
        GoldenRow.all().forEach(row -> BOOK.assess(row.facts(), row.asOf()).requirements().stream()
                .map(Clock::ruleId).filter(id -> id != null)
                .forEach(id -> rows.computeIfAbsent(id, _ -> new TreeSet<>()).add(row.id())));
        return rows;
    }

    private static Set<String> triedByExample() {
        return RuleBookLoader.examples(RuleBookLoader.shipped("regulations/")).stream().filter(RuleExample::matching)
                .filter(example -> BOOK.assess(example.facts(), example.asOf()).requirements().stream()
                        .anyMatch(clock -> example.ruleId().equals(clock.ruleId())))
                .map(RuleExample::ruleId).collect(Collectors.toSet());
    }

    private static List<String> clocks() {
        return BOOK.rules().stream().filter(rule -> CLOCKS.contains(rule.topic())).map(RuleInfo::id).toList();
    }

    @Test
    void everyRuleThatSetsARequirementIsTried() {
        Set<String> byExampleAlone = new TreeSet<>(clocks());
        byExampleAlone.removeAll(ROWS.keySet());
        System.out.println("rules by golden row: " + ROWS);
        System.out.println("rules tried by their example alone: " + byExampleAlone);
        Set<String> byNothing = new TreeSet<>(byExampleAlone);
        byNothing.removeAll(TRIED_BY_EXAMPLE);
        assertThat(byNothing).as("no golden row; tried by an example alone: %s; by rows: %s", byExampleAlone, ROWS)
                .isEmpty();
    }

    /** Most of the book rests on published dates and not on examples of its own making. */
    @Test
    void halfOfTheRulesHaveAGoldenRow() {
        assertThat(clocks()).filteredOn(ROWS::containsKey).hasSizeGreaterThan(clocks().size() / 2);
        assertThat(clocks()).as("every rule that a row met is of the book").containsAll(ROWS.keySet());
    }

    @Test
    void theBigOnesHaveSeveral() {
        assertThat(ROWS.get("us.180.209.e")).hasSizeGreaterThan(5);
        assertThat(ROWS.get("us.180.209.g.lpg")).hasSizeGreaterThan(5);
        assertThat(ROWS.get("us.180.209.a.4b")).isNotEmpty();
    }
}
