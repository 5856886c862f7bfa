package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.citations;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.on;

import java.time.LocalDate;
import java.util.List;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Requirement;
import org.junit.jupiter.api.Test;

/** Condemnation was 180.205(i) in the edition of 2019 and is (j) in PHMSA letter 24-0033R: a citation has its edition. */
@Trap(of = Catalogue.US, number = 16)
class ParagraphLettersMoveTest {

    private static Citation condemnation(String day) {
        var condemned = new Condition(List.of(), null, false, false, null, LocalDate.of(2019, 1, 1));
        var assessment = on(day, cylinder("DOT-4BA240", "2015-03").condition(condemned));
        assertThat(may(assessment)).isEqualTo("---");
        Citation citation = Asked.clock(assessment, Requirement.SHELL).citation();
        assertThat(citation).isNotNull();
        return citation;
    }

    @Test
    void theSameRuleUnderTwoLetters() {
        assertThat(condemnation("2021-01-26").section()).contains("180.205(i)");
        assertThat(condemnation("2021-01-26").edition()).contains("2019");
        assertThat(condemnation("2021-01-27").section()).isEqualTo("180.205(j)");
        assertThat(condemnation("2021-01-27").edition()).isEqualTo("2025-07-22");
    }

    @Test
    void everyCitationTellsItsEdition() {
        assertThat(citations()).isNotEmpty().allSatisfy(citation -> assertThat(citation.edition()).isNotBlank());
    }
}
