package org.collarbook.regulation.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Service;
import org.collarbook.regulation.Specification;
import org.junit.jupiter.api.Test;

/** What is off by default, switched on for a whole register. */
class EnabledTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    /** golden/world.tsv CA-01: ten years in Canada, told by a public page alone. */
    private static final Facts CANADIAN = Facts.builder().jurisdiction(new Jurisdiction("CA"))
            .kind(ContainerKind.CYLINDER).specification(Specification.parse("TC-4BAM17"))
            .manufactured(YearMonth.of(2015, 7)).service(Service.LPG).requalifications(List.of()).build();

    private static Outcome shell(RuleBook book) {
        return book.assess(CANADIAN, TODAY).requirements().stream()
                .filter(clock -> clock.requirement() == Requirement.SHELL).findFirst().orElseThrow().outcome();
    }

    @Test
    void aBasisOrARuleIsSwitchedOn() {
        RuleBook standard = RuleBookLoader.standard();
        assertThat(shell(standard)).isInstanceOf(Outcome.Undetermined.class);
        for (String name : List.of("SECONDARY", "ca.b339.propane")) {
            RuleBook book = RuleBookLoader.standard(Set.of(name));
            assertThat(shell(book)).isEqualTo(new Outcome.Due(YearMonth.of(2025, 7)));
            assertThat(book.hash()).isEqualTo(standard.hash());
            assertThat(book.engineVersion()).isNotEqualTo(standard.engineVersion()).contains(name);
        }
    }

    @Test
    void aNameThatIsNoneIsRefused() {
        assertThatThrownBy(() -> RuleBookLoader.standard(Set.of("SECONDHAND"))).isInstanceOf(RuleBookException.class)
                .hasMessageContaining("SECONDHAND").hasMessageContaining("SECONDARY");
    }

    @Test
    void aMisspeltFamilyIsRefused() {
        var files = RuleBookLoader.shipped("regulations/");
        for (String[] pair : new String[][]{{"family: [4B, 4BA, 4BW, 4E]", "family: [4B, 4BAA, 4BW, 4E]"},
                {"familyNot: [39, 2P, 2Q]", "familyNot: [93, 2P, 2Q]"}}) {
            var spoilt = new java.util.TreeMap<>(files);
            spoilt.replaceAll((_, text) -> text.replace(pair[0], pair[1]));
            assertThat(spoilt).isNotEqualTo(files);
            assertThatThrownBy(() -> RuleBookLoader.of(spoilt)).isInstanceOf(RuleBookException.class)
                    .hasMessageContaining(pair[1].contains("4BAA") ? "4BAA" : "93");
        }
    }
}
