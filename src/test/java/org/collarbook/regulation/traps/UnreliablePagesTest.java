package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.BOOK;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.marked;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A page that says "ten years, then five" of all cylinders and names no place (maplefrp.com) is no source. */
@Trap(of = Catalogue.WORLD, number = 16)
class UnreliablePagesTest {

    @Test
    void noRuleComesFromIt() {
        assertThat(BOOK.canonicalText()).isNotBlank().doesNotContain("maplefrp", "felttheater", "engineerfix");
    }

    @ParameterizedTest
    @CsvSource({"ADR,EN 1442", "CA,TC-4BWM17"})
    void tenYearsAreFollowedByTen(String place, String stamp) {
        assertThat(due(today(there(place, cylinder(stamp, "2012-04"))))).isEqualTo("2022-04");
        assertThat(due(today(marked(there(place, cylinder(stamp, "2012-04")), "2022-04")))).isEqualTo("2032-04");
    }
}
