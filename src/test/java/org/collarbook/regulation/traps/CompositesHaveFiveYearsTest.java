package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.notHeld;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;

import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Status;
import org.junit.jupiter.api.Test;

/** Five years for a composite unless its type approval says otherwise, P200(3)(d) NOTE; its end of life is apart. */
@Trap(of = Catalogue.WORLD, number = 7)
class CompositesHaveFiveYearsTest {

    @Test
    void fiveAndTenByTypeApproval() {
        assertThat(due(today(there("ADR", cylinder("EN 14427", "2018-03"))))).isEqualTo("2023-03");
        assertThat(may(today(there("ADR", cylinder("EN 14427", "2018-03"))))).isEqualTo("---");
        assertThat(due(today(there("ADR", cylinder("EN 14427", "2018-03")
                .extendedPeriod(ExtendedPeriod.TYPE_APPROVAL))))).isEqualTo("2028-03");
        assertThat(due(today(there("ADR", cylinder("EN 1442", "2018-03"))))).isEqualTo("2028-03");
    }

    @Test
    void underAUnMarkToo() {
        assertThat(due(today(cylinder("UN ISO 11119-3", "2020-03")))).isEqualTo("2025-03");
        assertThat(due(today(cylinder("UN ISO 4706", "2020-03")))).isEqualTo("2030-03");
    }

    /** The life that a type approval sets is not held, and is told so; 49 CFR's own, that of the 3HT, ends it. */
    @Test
    void theEndOfLifeIsAnotherLimit() {
        assertThat(notHeld("ADR", "P200", "end of life")).isTrue();
        var old = marked(cylinder("DOT-3HT1850", "2002-10"), "2025-08", Method.VOLUMETRIC_EXPANSION);
        assertThat(today(old).status()).as("tested, and past its life").isEqualTo(Status.CONDEMNED);
        var inLife = marked(cylinder("DOT-3HT1850", "2002-11"), "2025-08", Method.VOLUMETRIC_EXPANSION);
        assertThat(due(today(inLife))).isEqualTo("2028-08");
    }
}
