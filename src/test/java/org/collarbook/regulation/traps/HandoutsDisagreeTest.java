package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.citations;
import static org.collarbook.regulation.traps.Asked.clock;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.on;
import static org.collarbook.regulation.traps.Asked.today;

import java.util.Locale;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Requirement;
import org.junit.jupiter.api.Test;

/**
 * PHMSA's handouts disagree ("Requalification Guidance for Propane Cylinders" v3: 5 or 10 years; that of 2023: 12); the
 * regulation wins.
 */
@Trap(of = Catalogue.US, number = 15)
class HandoutsDisagreeTest {

    @Test
    void theAnswerIsOfTheRegulation() {
        var made2015 = cylinder("DOT-4BA240", "2015-03");
        assertThat(due(today(made2015))).as("ten years by the handout").isEqualTo("2027-03");
        assertThat(due(on("2020-11-29", made2015))).as("when the text said ten").isEqualTo("2025-03");
        Citation citation = clock(today(made2015), Requirement.SHELL).citation();
        assertThat(citation).isNotNull();
        assertThat(citation.instrument()).isEqualTo("49 CFR");
        assertThat(citation.section()).isEqualTo("180.209(e)");
    }

    @Test
    void noRuleCitesAHandout() {
        assertThat(citations()).isNotEmpty().allSatisfy(citation -> assertThat(
                (citation.instrument() + citation.edition() + citation.url()).toLowerCase(Locale.ROOT))
                .doesNotContain("handout", "guidance for propane", "propane_en", "propane-en", "scribd"));
    }
}
