package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** 29 CFR 1910.157(e) and (f) with every row of Table L-1, golden/extinguishers.tsv; the source stands beside each row. */
class ExtinguishersTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();
    private static final List<Map<String, String>> ROWS = Tsv.read("/golden/extinguishers.tsv");

    static Stream<Map<String, String>> rows() {
        return ROWS.stream();
    }

    private static FactsBuilder facts(Map<String, String> row) {
        List<Requalification> records = row.get("records").equals("-")
                ? List.of()
                : Arrays.stream(row.get("records").split(", ")).map(ExtinguishersTest::record).toList();
        return Facts.builder().jurisdiction(Jurisdiction.US).kind(ContainerKind.EXTINGUISHER)
                .extinguisher(Extinguisher.valueOf(row.get("type")))
                .manufactured(YearMonth.parse(row.get("manufactured"))).requalifications(records);
    }

    private static Requalification record(String text) {
        String[] parts = text.split(" ");
        return Requalification.passed(YearMonth.parse(parts[0]), Method.valueOf(parts[1]));
    }

    @ParameterizedTest
    @MethodSource("rows")
    void givesWhatIsPublished(Map<String, String> row) {
        Assessment assessment = BOOK.assess(facts(row).build(), LocalDate.parse(row.get("as_of")));
        Clock clock = assessment.clock(Requirement.valueOf(row.get("requirement")));
        String told = clock == null
                ? "NONE"
                : clock.outcome() instanceof Outcome.Due due ? due.month().toString() : clock.outcome().code();
        assertThat(told).as("%s %s", row.get("id"), assessment).isEqualTo(row.get("expected"));
        if (clock != null) {
            assertThat(clock.status().name()).as("%s", row.get("id")).isEqualTo(row.get("status"));
            assertThat(clock.citation()).isNotNull().satisfies(cited -> {
                assertThat(cited.section()).startsWith("1910.157");
                assertThat(cited.basis()).isEqualTo(Basis.TEXT);
            });
        }
    }

    /** Table L-1 has sixteen rows; its two of soldered brass are one kind here. */
    @Test
    void everyRowAndEveryKindIsThere() {
        Set<String> pressure = ROWS.stream()
                .filter(row -> row.get("source").contains("Table L-1")).map(row -> row.get("row"))
                .collect(Collectors.toSet());
        assertThat(pressure).hasSize(16);
        assertThat(ROWS).extracting(row -> row.get("type"))
                .containsAll(Arrays.stream(Extinguisher.values()).map(Enum::name).toList());
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theWordIsTheWorstOfItsClocks(Map<String, String> row) {
        Assessment assessment = BOOK.assess(facts(row).build(), LocalDate.parse(row.get("as_of")));
        Status worst = assessment.requirements().stream().map(Clock::status).min(Status::compareTo)
                .orElse(Status.NOT_REQUIRED);
        assertThat(assessment.status()).isEqualTo(worst);
        assertThat(assessment.mayFill().allowed()).as("no gas goes into an extinguisher").isFalse();
    }

    @Test
    void whatIsNotKnownIsUndetermined() {
        Facts known = facts(ROWS.get(2)).build();
        for (FactsBuilder less : List.of(known.toBuilder().extinguisher(null), known.toBuilder().requalifications(null),
                known.toBuilder().manufactured(null).requalifications(List.of()),
                known.toBuilder().jurisdiction(null))) {
            assertThat(BOOK.assess(less.build(), Cases.TODAY).status()).isEqualTo(Status.UNDETERMINED);
        }
    }

    @Test
    void aClockWithoutARecordIsToldAsMissing() {
        Facts facts = facts(ROWS.get(2)).requalifications(List.of()).build();
        assertThat(BOOK.assess(facts, Cases.TODAY).reasons())
                .filteredOn(reason -> reason.code() == ReasonCode.MISSING_RECORD).extracting(Reason::citation)
                .extracting(Citation::section).containsExactlyInAnyOrder("1910.157(e)(2)", "1910.157(e)(3)");
    }
}
